import type { Finding } from '../../../finding/finding.ts';
import { bareNumber, measured, said } from '../../../finding/measure.ts';
import {
  type Answer,
  aboveZeroField,
  answer,
  choiceField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  textField,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../../../quantity/index.ts';
import { api670 } from '../../../source/api-670.ts';
import { clause } from '../../../source/source.ts';
import { riseTime, surfaceSpeed } from '../notch-pulse.ts';
import {
  arrangementKind,
  askedFor,
  derivedFrom,
  type ProbeSurroundings,
  rowOf,
  saying,
  statedIn,
  usableVoltages,
} from './arrangement-kind.ts';

const sources = [clause(api670, 'once-per-turn mark', 'from memory')];

const dataSheet = {
  mark: choiceField(['notch', 'key'], 'Whether it is cut into the shaft or stands out of it'),
  width: aboveZeroField(quantityField('length', 'Width along the circumference', { example: '12 mm' })),
  depth: aboveZeroField(quantityField('length', 'Depth of the notch, or height of the key', { example: '1.5 mm' })),
  gapVoltage: quantityField('voltage', 'Voltage set on the plain shaft', { example: '-6 V' }),
  tipDiameter: optional(quantityField('length', 'Diameter of the tip', { example: '8 mm' })),
  markAngle: optional(quantityField('angle', 'Angle of the mark against a mark on the rotor', { example: '0 deg' })),
  remark: optional(textField('Where the mark is and how it is found at rest')),
} as const;

type MarkSheet = Sheet<typeof dataSheet>;

const asked = {
  mark: { asks: 'Is the mark a notch or a key?', because: 'The pulse goes the other way, and so does the trigger.' },
  width: { asks: 'How wide is the mark along the circumference?', because: 'The pulse lasts as long as it passes.' },
  depth: { asks: 'How deep is the mark?', because: 'The height of the pulse follows from it.' },
  gapVoltage: {
    asks: 'At which voltage is the gap set on the plain shaft, beside the mark?',
    because: 'Set over a notch by mistake, the tip touches the shaft as it turns.',
  },
} as const;

/** Least depth, width in tip diameters, and height of the pulse. Source: API 670, from memory, uncertain. */
const least = { depth: 1.5e-3, tips: 1.5, pulse: 5 } as const;

function swingOf(sheet: MarkSheet, around: ProbeSurroundings): Answer<number> {
  return fromAll(
    { depth: statedIn(sheet, 'depth'), system: around.system },
    ({ depth, system }) => system.scaleFactor * depth,
  );
}

/** Over a notch the gap is wider and the voltage further below zero; over a key the other way. */
function overMark(sheet: MarkSheet, around: ProbeSurroundings): Answer<number> {
  return fromAll(
    { plain: statedIn(sheet, 'gapVoltage'), swing: swingOf(sheet, around), mark: statedIn(sheet, 'mark') },
    ({ plain, swing, mark }) => (mark === 'notch' ? plain - swing : plain + swing),
  );
}

function pulseAtFastest(sheet: MarkSheet, around: ProbeSurroundings): Answer<number> {
  const passing = fromAll(
    { width: statedIn(sheet, 'width'), diameter: around.shaftDiameter, speed: around.fastest },
    (known) => known,
  );
  return thenAnswer(passing, ({ width, diameter, speed }) => {
    const surface = surfaceSpeed(diameter, speed);
    return surface > 0
      ? answer(width / surface)
      : unanswered([{ of: around.at, what: 'speed and diameter of the shaft, above zero' }]);
  });
}

/** A probe over a notch or a key: the beginning of every turn, and the zero of every phase. */
export const oncePerTurn = arrangementKind({
  kind: 'once-per-turn',
  name: 'Once-per-turn reference',
  dataSheet,
  sources,
  rows: (sheet, around) => [
    rowOf(
      'surface-speed',
      'velocity',
      fromAll({ d: around.shaftDiameter, n: around.fastest }, ({ d, n }) => surfaceSpeed(d, n)),
      'at the highest speed',
      derivedFrom('v = π · D · n', { d: around.shaftDiameter, n: around.fastest }, ({ d, n }) => {
        return said`π · ${measured('length', d, 6)} · ${measured('shaft speed', n, 6)} = ${measured('velocity', surfaceSpeed(d, n))}`;
      }),
    ),
    rowOf(
      'pulse',
      'time',
      pulseAtFastest(sheet, around),
      'at the highest speed',
      derivedFrom(
        't = w / (π · D · n)',
        {
          w: statedIn(sheet, 'width'),
          d: around.shaftDiameter,
          n: around.fastest,
          pulse: pulseAtFastest(sheet, around),
        },
        ({ w, d, n, pulse }) =>
          said`${measured('length', w, 6)} / (π · ${measured('length', d, 6)} · ${measured('shaft speed', n, 6)}) = ${measured('time', pulse)}`,
      ),
    ),
    rowOf(
      'rise-time',
      'time',
      fromAll({ system: around.system }, ({ system }) => riseTime(system.corner)),
      said`${bareNumber(0.35)} over the upper corner of the set`,
      derivedFrom('t_r = 0.35 / f', { system: around.system }, ({ system: { corner } }) => {
        return said`${bareNumber(0.35)} / ${measured('frequency', corner, 6)} = ${measured('time', riseTime(corner))}`;
      }),
    ),
    rowOf(
      'swing',
      'voltage',
      swingOf(sheet, around),
      'scale factor times depth, before the electronics hold',
      derivedFrom(
        'V_s = S · h',
        { depth: statedIn(sheet, 'depth'), system: around.system },
        ({ depth, system: { scaleFactor } }) =>
          said`${measured('voltage per displacement', scaleFactor, 6)} · ${measured('length', depth, 6)} = ${measured('voltage', scaleFactor * depth)}`,
      ),
    ),
    rowOf(
      'over-mark',
      'voltage',
      overMark(sheet, around),
      'gap set on the plain shaft, and the swing',
      derivedFrom(
        valueIfStated(sheet.values.mark) === 'notch' ? 'V_m = V_0 − V_s' : 'V_m = V_0 + V_s',
        {
          plain: statedIn(sheet, 'gapVoltage'),
          swing: swingOf(sheet, around),
          mark: statedIn(sheet, 'mark'),
          over: overMark(sheet, around),
        },
        ({ plain, swing, mark, over }) =>
          said`${measured('voltage', plain, 6)} ${mark === 'notch' ? '−' : '+'} ${measured('voltage', swing, 6)} = ${measured('voltage', over)}`,
      ),
    ),
  ],
  doubts: (sheet, around) => [
    ...askedFor(sheet, around, asked, sources),
    ...size(sheet, around),
    ...pulse(sheet, around),
    ...inReach(sheet, around),
  ],
});

function size(sheet: MarkSheet, { at }: ProbeSurroundings): readonly Finding[] {
  const say = saying(at, sources);
  const [depth, width] = [valueIfStated(sheet.values.depth), valueIfStated(sheet.values.width)];
  const tip = valueIfStated(sheet.values.tipDiameter);
  const found: Finding[] = [];
  if (depth !== undefined && depth < least.depth * (1 - 1e-9)) {
    found.push(
      say('mark-shallow', 'warns', {
        found: measured('length', depth),
        limit: measured('length', least.depth),
        because: 'A shallow mark gives a pulse that vibration and run-out can hide.',
        remedy: ['cut the notch deeper', 'a key instead'],
      }),
    );
  }
  if (width !== undefined && tip !== undefined && width < least.tips * tip * (1 - 1e-9)) {
    found.push(
      say('mark-narrow', 'warns', {
        found: measured('length', width),
        limit: measured('length', least.tips * tip),
        because: 'The probe looks past a mark narrower than its field; the pulse loses height.',
        remedy: ['a wider mark', 'a smaller tip'],
      }),
    );
  }
  return found;
}

function pulse(sheet: MarkSheet, around: ProbeSurroundings): readonly Finding[] {
  const say = saying(around.at, sources);
  const [lasts, rises] = [
    pulseAtFastest(sheet, around),
    fromAll({ system: around.system }, ({ system }) => riseTime(system.corner)),
  ];
  const swing = swingOf(sheet, around);
  const found: Finding[] = [];
  if (lasts.known && rises.known && lasts.value <= rises.value) {
    found.push(
      say('pulse-short', 'blocks-issue', {
        found: measured('time', lasts.value),
        limit: measured('time', rises.value),
        because: 'The mark has passed before the electronics have followed: at full speed there is no trigger.',
        remedy: ['a wider mark', 'a mark on a smaller diameter', 'a faster set'],
      }),
    );
  }
  if (swing.known && swing.value < least.pulse) {
    found.push(
      say('pulse-low', 'warns', {
        found: measured('voltage', swing.value),
        limit: measured('voltage', least.pulse),
        because: 'A trigger has to stand clear of vibration and run-out on the same probe.',
        remedy: ['a deeper mark', 'a set of a higher scale factor'],
      }),
    );
  }
  return found;
}

function inReach(sheet: MarkSheet, around: ProbeSurroundings): readonly Finding[] {
  const over = overMark(sheet, around);
  const swing = swingOf(sheet, around);
  if (!over.known || !swing.known) return [];
  if (over.value >= usableVoltages.low && over.value <= usableVoltages.high) return [];
  const best =
    valueIfStated(sheet.values.mark) === 'key' ? usableVoltages.low + 2 : usableVoltages.low + swing.value + 2;
  const possible = swing.value + 2 <= usableVoltages.high - usableVoltages.low;
  return [
    saying(around.at, sources)('mark-out-of-reach', 'warns', {
      found: said`over the mark ${measured('voltage', over.value)}`,
      limit: said`${measured('voltage', usableVoltages.low)} to ${measured('voltage', usableVoltages.high)}`,
      because: 'The output runs into its end: the pulse loses its height, and the edge that gives the phase its shape.',
      remedy: possible
        ? [said`set the gap on the plain shaft near ${measured('voltage', Number(best.toPrecision(2)))}`]
        : ['a shallower mark', 'a set of a lower scale factor'],
    }),
  ];
}
