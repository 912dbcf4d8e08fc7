import type { DesignedPoint } from '../../design/design.ts';
import { measured, measuredSpan, type Said, said } from '../../finding/measure.ts';
import { fromAll, type Span, type Stated, unanswered, valueIfStated } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf, sensitivityAtInput } from '../expected.ts';
import { type MeasuredRecord, recordName, voltsPerNumber } from '../measured-record.ts';
import {
  type CheckedRecord,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';

/** How exactly a gap is set, and how true a direct voltage is read, in volts. */
const setting = 0.5;
const reading = 0.05;
/** A shaft that floats or tilts goes a little beyond its clearance before the reading is wrong. */
const beyondClearance = 1.2;

/** The direct voltage of a probe against the one it was to be set to, and its shift against what the bearing allows. */
export const gap = checkKind({
  kind: 'gap',
  title: 'Gap voltage',
  question: 'Does the probe stand where it was to be set, and does the shaft stay within its bearing?',
  on: ['at-rest', 'slow-roll', 'running'],
  applies: (designed) => probeSet(designed) !== undefined,
  sources: [
    clause(api670, 'linear range of a probe', 'from memory'),
    clause(tradePractice, 'gap within half a volt of its setting; shift explained by the clearance'),
  ],
  judge: (looked): readonly Judged[] => {
    const { designed, record } = looked;
    const { coupling } = record.statement;
    if (coupling.known && coupling.value === 'alternating') {
      return record.occasion.kind === 'at-rest'
        ? [
            cannotTell({ because: 'The record is AC-coupled: its mean says nothing of the gap.' }, [
              'a direct-coupled record, or a hand meter at the driver',
            ]),
          ]
        : [];
    }
    const known = fromAll(
      {
        coupling,
        volts: voltsOf(record),
        sensitivity: sensitivityAtInput(designed),
        set: probeSet(designed)!,
      },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { volts, set, sensitivity } = known.value;
    const atRest = record.occasion.kind === 'at-rest' ? placed(designed, volts, set, sensitivity) : [];
    return [...inRange(designed, volts, sensitivity), ...atRest, ...shifted(looked, volts, sensitivity)];
  },
});

function probeSet(designed: DesignedPoint) {
  const travel = chainOf(designed)?.transducer.linearTravel;
  if (travel === undefined || (travel.known && travel.value.set === undefined)) return undefined;
  return fromAll({ travel }, (known) => known.travel.set!.voltage);
}

function voltsOf(record: MeasuredRecord) {
  return fromAll(
    { moments: record.measures.moments, scale: voltsPerNumber(record) },
    ({ moments, scale }) => moments.mean * scale,
  );
}

/** Inside the linear range of the set, or the voltages within which the monitor calls it sound. */
function inRange(designed: DesignedPoint, volts: number, sensitivity: number): readonly Judged[] {
  const window = soundVoltages(designed, sensitivity);
  if (window === undefined) return [];
  const facts = {
    of: 'range',
    expected: measuredSpan('voltage', window),
    tolerance: said`${measured('voltage', reading)}, the error of the recorder`,
    found: measured('voltage', volts, 3),
    because: 'Outside its linear range a probe does not read the gap.',
  };
  if (volts >= window.low - reading && volts <= window.high + reading) return [meets(facts)];
  return [fails(facts, volts > window.high ? near(facts.found) : far(facts.found))];
}

function soundVoltages(designed: DesignedPoint, sensitivity: number): Span<'voltage'> | undefined {
  const pair = designed.stated.probes?.find((each) => each.kind === 'xy-pair');
  const sound = pair?.kind === 'xy-pair' ? valueIfStated(pair.sheet.values.okVoltages) : undefined;
  if (sound !== undefined) return sound;
  const values = chainOf(designed)!.parts.transducer.sheet.values as {
    readonly linearRange?: Stated<Span<'length'>>;
  };
  const range = valueIfStated(values.linearRange);
  return range === undefined
    ? undefined
    : ({ low: -sensitivity * range.high, high: -sensitivity * range.low } as Span<'voltage'>);
}

interface Setting {
  readonly volts: number;
  /** How far from it the shaft may lie at rest, in volts. */
  readonly either: number;
}

/** What the arrangement of the probes says of the setting; the data sheet where it says nothing. */
function settingOf(designed: DesignedPoint, set: number, sensitivity: number): Setting {
  const clearance = designed.probes?.around.clearance;
  const half = clearance?.known ? (sensitivity * clearance.value) / 2 : undefined;
  for (const each of designed.stated.probes ?? []) {
    if (each.kind === 'xy-pair') {
      const volts = valueIfStated(each.sheet.values.gapVoltage);
      const centred = valueIfStated(each.sheet.values.gapSet) === 'centred';
      if (volts !== undefined) return { volts, either: centred ? (half ?? 1) : 0 };
    }
    if (each.kind === 'thrust-pair') {
      const [volts, float] = [valueIfStated(each.sheet.values.gapVoltage), valueIfStated(each.sheet.values.float)];
      if (volts !== undefined) return { volts, either: sensitivity * (float ?? 0) };
    }
    if (each.kind === 'once-per-turn') {
      const volts = valueIfStated(each.sheet.values.gapVoltage);
      if (volts !== undefined) return { volts, either: 0 };
    }
  }
  return { volts: set, either: 0 };
}

function placed(designed: DesignedPoint, volts: number, set: number, sensitivity: number): readonly Judged[] {
  const { volts: expected, either } = settingOf(designed, set, sensitivity);
  const reach = setting + either;
  const facts = {
    of: 'setting',
    expected: measured('voltage', expected),
    tolerance: said`${measured('voltage', reach)}: as exactly as a gap is set${either > 0 ? ', and where the shaft may lie' : ''}`,
    found: measured('voltage', volts, 3),
    because: 'Position and clearance are counted from the gap that was set.',
  };
  if (Math.abs(volts - expected) <= reach) return [meets(facts)];
  return [
    fails(facts, [
      {
        cause: 'the gap was set otherwise, or the probe has turned in its holder',
        evidence: facts.found,
        next: 'Read the setting sheet; set the gap again with the shaft where the sheet says.',
      },
      {
        cause: 'the shaft lies elsewhere than at the setting',
        evidence: said`${measured('length', Math.abs(volts - expected) / sensitivity)} away`,
        next: 'Lift the shaft by its clearance and watch the voltage.',
      },
      {
        cause: 'probe, extension cable and driver do not belong together, or another steel than calibrated on',
        evidence: facts.found,
        next: 'Take the curve of the installed set.',
      },
    ]),
  ];
}

/** Against the record at rest: no farther than the clearance lets the shaft go. */
function shifted({ designed, record, others }: CheckedRecord, volts: number, sensitivity: number): readonly Judged[] {
  const before = others.find(
    (each) => each.at === record.at && each.channel === record.channel && each.occasion.kind === 'at-rest',
  );
  if (record.occasion.kind === 'at-rest' || before === undefined) return [];
  const clearance = designed.probes?.around.clearance ?? unanswered([{ of: designed.point.of, what: 'clearance' }]);
  const known = fromAll({ rest: voltsOf(before), clearance }, (each) => each);
  if (!known.known) return wants(known.missing);
  const shift = Math.abs(volts - known.value.rest) / sensitivity;
  const most = beyondClearance * known.value.clearance;
  const facts = {
    of: 'shift since rest',
    expected: said`up to ${measured('length', known.value.clearance)}, the diametral clearance`,
    tolerance: said`${beyondClearance} times that: warm shafts, pads that tilt`,
    found: measured('length', shift, 3),
    because: said`Held against ${recordName(before)}.`,
  };
  if (shift <= most + reading / sensitivity) return [meets(facts)];
  return [
    fails(facts, [
      {
        cause: 'wiped or worn bearing, or another clearance than stated',
        evidence: facts.found,
        next: 'Compare with the other probe of the bearing; check the clearance by lifting the shaft.',
      },
      {
        cause: 'drift of probe or driver with temperature',
        evidence: facts.found,
        next: 'Read the gap again an hour after the stop, cold and warm.',
      },
      {
        cause: 'the two records are of different probes',
        evidence: said`the same channel name in two recordings`,
        next: 'Push the shaft at rest and see which channel moves.',
      },
    ]),
  ];
}

const near = (evidence: Said): readonly RivalCause[] => [
  {
    cause: 'short in probe or cable, or the probe touches the shaft',
    evidence,
    next: 'Disconnect the probe at the driver: the voltage goes to that of an open probe where the cable is good.',
  },
  { cause: 'no supply at the driver', evidence, next: 'Measure the supply at the terminals of the driver.' },
  { cause: 'the gap is too small', evidence, next: 'Measure the gap with a feeler gauge of plastic; set it again.' },
];

const far = (evidence: Said): readonly RivalCause[] => [
  {
    cause: 'open circuit: probe or extension cable unplugged or broken',
    evidence,
    next: 'Measure the resistance of the probe at the driver.',
  },
  { cause: 'the gap is too large, or there is no target', evidence, next: 'Look at the probe; set it again.' },
];
