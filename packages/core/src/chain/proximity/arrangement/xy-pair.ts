import type { Finding } from '../../../finding/finding.ts';
import { measured, said } from '../../../finding/measure.ts';
import {
  type Answer,
  answer,
  choiceField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  spanField,
  textField,
  valueIfStated,
} from '../../../quantity/index.ts';
import { api670 } from '../../../source/api-670.ts';
import { clause } from '../../../source/source.ts';
import { tradePractice } from '../../../source/trade-practice.ts';
import type { Derived } from '../../../uncertainty/contribution.ts';
import { gapOfVoltage } from '../../formulas/proximity-gap.ts';
import { gapShift } from '../gap-shift.ts';
import {
  arrangementKind,
  askedFor,
  derivedFrom,
  type ProbeSurroundings,
  rowOf,
  saying,
  statedIn,
} from './arrangement-kind.ts';

const sources = [
  clause(api670, 'XY probes', 'from memory'),
  clause(tradePractice, 'XY probes: ask for angle, view direction, rotation'),
];

const dataSheet = {
  angleX: quantityField('angle', 'Probe X from the top of the bearing, to the right counted positive', {
    example: '45 deg',
  }),
  angleY: quantityField('angle', 'Probe Y, counted the same way', { example: '-45 deg' }),
  seenFrom: choiceField(['driver', 'driven'], 'From which end right and left are seen, looking to the other'),
  rotation: choiceField(['clockwise', 'counter-clockwise'], 'How the shaft turns, seen from there'),
  gapVoltage: quantityField('voltage', 'Voltage at which both gaps are set', { example: '-10 V' }),
  gapSet: choiceField(['at rest', 'centred'], 'Whether the shaft rests on the bottom or was held in the middle'),
  okVoltages: optional(
    spanField('voltage', 'Gap voltages inside which a probe counts as sound', { example: '-17.7..-3 V' }),
  ),
  orientation: optional(textField('Which way the cables leave, and what marks each probe')),
} as const;

type PairSheet = Sheet<typeof dataSheet>;

const asked = {
  angleX: {
    asks: 'At which angle from the top does probe X stand? The bearing drawing or the plate at the bearing says.',
    because:
      'Without it the orbit cannot be turned upright, and the rest position of the shaft cannot be told in volts.',
  },
  angleY: {
    asks: 'At which angle from the top does probe Y stand?',
    because: 'Without it nobody can tell whether the two probes are a quarter turn apart.',
  },
  seenFrom: {
    asks: 'From which end are right and left seen?',
    because: 'Right seen from the driver is left seen from the driven machine: the orbit would run backwards.',
  },
  rotation: {
    asks: 'Which way does the shaft turn, seen from there?',
    because: 'Forward and backward precession are told apart by it alone.',
  },
  gapVoltage: {
    asks: 'At which voltage are the gaps set?',
    because: 'The place of the shaft in its bearing is read from the change since then.',
  },
  gapSet: {
    asks: 'Was the gap set with the shaft at rest on the bottom, or in the middle?',
    because: 'Between the two lies half the clearance, along the axis of the probe.',
  },
} as const;

/** The voltage of a shaft in the middle: as set, or less the way up from the bottom. */
export function centredVoltage(
  sheet: PairSheet,
  around: ProbeSurroundings,
  which: 'angleX' | 'angleY',
): Answer<number> {
  const set = fromAll({ v: statedIn(sheet, 'gapVoltage'), how: statedIn(sheet, 'gapSet') }, (known) => known);
  if (!set.known) return set;
  if (set.value.how === 'centred') return answer(set.value.v as number);
  return fromAll(
    { shift: shiftSeen(sheet, around, which), system: around.system },
    ({ shift, system }) => set.value.v + system.scaleFactor * shift,
  );
}

/** Right or left is the same here: only the distance from the top counts. */
function shiftSeen(sheet: PairSheet, around: ProbeSurroundings, which: 'angleX' | 'angleY'): Answer<number> {
  return fromAll({ c: around.clearance, angle: statedIn(sheet, which) }, ({ c, angle }) => gapShift(c, angle));
}

const scale = (factor: number) => measured('voltage per displacement', factor, 6);

/** As it was set where that was in the middle; else from the bottom up. */
function centredDerived(
  sheet: PairSheet,
  around: ProbeSurroundings,
  which: 'angleX' | 'angleY',
  shift: Answer<number>,
): Answer<Derived> {
  const volts = statedIn(sheet, 'gapVoltage');
  if (valueIfStated(sheet.values.gapSet) === 'centred') {
    return derivedFrom('V_c = V_set', { volts }, (known) => said`${measured('voltage', known.volts)}`);
  }
  return derivedFrom(
    'V_c = V_set + S · d',
    { volts, shift, system: around.system, centred: centredVoltage(sheet, around, which) },
    ({ volts: v, shift: d, system, centred }) =>
      said`${measured('voltage', v, 6)} + ${scale(system.scaleFactor)} · ${measured('length', d, 6)} = ${measured('voltage', centred)}`,
  );
}

/** Two radial probes a quarter turn apart: X the one to the right, looking from the driver to the driven machine. */
export const xyPair = arrangementKind({
  kind: 'xy-pair',
  name: 'Two radial probes, X and Y',
  dataSheet,
  sources,
  rows: (sheet, around) => {
    const volts = statedIn(sheet, 'gapVoltage');
    const probe = (letter: 'x' | 'y') => {
      const which = letter === 'x' ? 'angleX' : 'angleY';
      const shift = shiftSeen(sheet, around, which);
      return [
        rowOf(
          `shift-${letter}`,
          'length',
          shift,
          'gap that goes as the shaft rises from the bottom to the middle',
          derivedFrom(
            'd = (c / 2) · cos(θ)',
            { shift, c: around.clearance, angle: statedIn(sheet, which) },
            ({ shift: d, c, angle }) =>
              said`(${measured('length', c, 6)} / 2) · cos(${measured('angle', angle, 6)}) = ${measured('length', d)}`,
          ),
        ),
        rowOf(
          `shift-${letter}-voltage`,
          'voltage',
          fromAll({ shift, system: around.system }, (known) => known.system.scaleFactor * known.shift),
          'the same in volts',
          derivedFrom('V_d = S · d', { shift, system: around.system }, ({ shift: d, system: { scaleFactor: s } }) => {
            return said`${scale(s)} · ${measured('length', d, 6)} = ${measured('voltage', s * d)}`;
          }),
        ),
        rowOf(
          `centred-${letter}`,
          'voltage',
          centredVoltage(sheet, around, which),
          'a shaft in the middle',
          centredDerived(sheet, around, which, shift),
        ),
      ];
    };
    return [
      rowOf(
        'gap',
        'length',
        fromAll({ v: volts, system: around.system }, ({ v, system }) => gapOfVoltage(system.scaleFactor, v)),
        'from the straight line; the curve of this set tells its offset',
        derivedFrom('gap = |V| / S', { v: volts, system: around.system }, ({ v, system: { scaleFactor: s } }) => {
          return said`|${measured('voltage', v, 6)}| / ${scale(s)} = ${measured('length', gapOfVoltage(s, v))}`;
        }),
      ),
      ...probe('x'),
      ...probe('y'),
    ];
  },
  doubts: (sheet, around) => [
    ...askedFor(sheet, around, asked, sources),
    ...angles(sheet, around),
    ...voltages(sheet, around),
  ],
});

const degree = Math.PI / 180;
/** By how much an angle may differ from the usual one without a word. */
const slack = 5 * degree;

function angles(sheet: PairSheet, { at }: ProbeSurroundings): readonly Finding[] {
  const both = fromAll({ x: statedIn(sheet, 'angleX'), y: statedIn(sheet, 'angleY') }, (known) => known);
  if (!both.known) return [];
  const say = saying(at, sources);
  const { x, y } = both.value;
  const apart = Math.abs(Math.atan2(Math.sin(x - y), Math.cos(x - y)));
  const found: Finding[] = [];
  if (Math.abs(apart - 90 * degree) > slack + 1e-9) {
    found.push(
      say('pair-apart', 'blocks-issue', {
        found: said`probes ${measured('angle', apart)} apart`,
        limit: '90°, give or take 5°',
        because: 'Two signals that are not a quarter turn apart make no orbit, and S_max of them is none.',
        remedy: ['mount the two a quarter turn apart', 'correct the stated angles'],
      }),
    );
  }
  const seenFrom = valueIfStated(sheet.values.seenFrom);
  // What is right seen from the driven machine is left seen from the driver.
  const rightward = seenFrom === 'driven' ? Math.sin(y) - Math.sin(x) : Math.sin(x) - Math.sin(y);
  if (seenFrom !== undefined && rightward <= 0) {
    found.push(
      say('pair-exchanged', 'question', {
        found: said`X at ${measured('angle', x)} and Y at ${measured('angle', y)}, seen from the ${seenFrom === 'driver' ? 'driver' : 'driven machine'}`,
        limit: 'X to the right, looking from the driver to the driven machine',
        because: 'With X and Y exchanged the orbit runs backwards: a rub would be read out of a sound machine.',
        remedy: ['exchange the two names', 'state from which end right and left are seen'],
        asks: 'Are X and Y exchanged, or were the angles seen from the other end?',
      }),
    );
  }
  const offUsual = [x, y].filter((each) => Math.abs(Math.abs(each) - 45 * degree) > slack + 1e-9);
  if (offUsual.length > 0) {
    found.push(
      say('pair-unusual', 'notes', {
        found: said`probes at ${[x, y].map((each) => measured('angle', each)).join(' and ')} from the top`,
        limit: '45° to either side, give or take 5°',
        because: 'Drivers, racks and people take 45° for granted; another angle has to stand on the plate.',
        remedy: ['write the angles on the plate at the bearing and in the configuration of the rack'],
      }),
    );
  }
  return found;
}

function voltages(sheet: PairSheet, around: ProbeSurroundings): readonly Finding[] {
  const ok = valueIfStated(sheet.values.okVoltages);
  const say = saying(around.at, sources);
  const places = fromAll(
    {
      set: statedIn(sheet, 'gapVoltage'),
      x: centredVoltage(sheet, around, 'angleX'),
      y: centredVoltage(sheet, around, 'angleY'),
      system: around.system,
    },
    (known) => known,
  );
  if (!places.known) return [];
  const { set, x, y, system } = places.value;
  const range = {
    low: -system.scaleFactor * system.linearRange.high,
    high: -system.scaleFactor * system.linearRange.low,
  };
  const found: Finding[] = [];
  for (const [where, volts] of [
    ['as set', set as number],
    ['X with the shaft in the middle', x],
    ['Y with the shaft in the middle', y],
  ] as const) {
    if (volts < range.low || volts > range.high) {
      found.push(
        say('gap-outside-range', 'blocks-issue', {
          found: said`${where}: ${measured('voltage', volts)}`,
          limit: said`${measured('voltage', range.low)} to ${measured('voltage', range.high)}, the linear range of the set`,
          because: 'Outside its linear range a probe tells neither the place nor the motion of the shaft.',
          remedy: ['set the gap nearer to the middle of the range', 'a probe with a longer range'],
        }),
      );
    } else if (ok !== undefined && (volts < ok.low || volts > ok.high)) {
      found.push(
        say('gap-outside-ok', 'blocks-issue', {
          found: said`${where}: ${measured('voltage', volts)}`,
          limit: said`${measured('voltage', ok.low)} to ${measured('voltage', ok.high)}, where a probe counts as sound`,
          because: 'A sound probe would be taken for a broken one, and its vote would be lost.',
          remedy: ['set the gap again', 'widen the voltages that count as sound'],
        }),
      );
    }
  }
  return found;
}
