import type { Judgement } from '../chain/rules/rule.ts';
import { reasoned } from '../chain/rules/rule.ts';
import { bareNumber, decibels, measured, measuredLevel, type Said, said, saidTogether } from '../finding/measure.ts';
import { type Answer, type Fields, type Sheet, type Stated, theMissing } from '../quantity/index.ts';
import type { Design, DesignedMachine, DesignedPoint } from './design.ts';

/** What is worked out of what is stated, in the order in which one follows from the other. */
export const derivedSorts = [
  'frequency',
  'target',
  'limits',
  'chain',
  'proof',
  'uncertainty',
  'alarm',
  'scaling',
  'settings',
  'hazardous area',
  'ground loop',
  'finding',
] as const;
export type DerivedSort = (typeof derivedSorts)[number];

/** One thing a design says of one place, as it is read, and all of it as it is compared. */
export interface DerivedValue {
  readonly sort: DerivedSort;
  /** The machine or measuring point. */
  readonly at: string;
  /** `alert`, `chain/overload of vane pass`, `transducer`. */
  readonly name: string;
  readonly says: Said;
  /** What counts in a comparison beside what is said: full digits, statements of a part. */
  readonly beside: string;
  /** Of a part: what its sheet states, field by field as written. */
  readonly sheet?: Readonly<Record<string, string>>;
}

/**
 * Everything a design says, by a key that is the same in every design for the same thing at the same place. Where a
 * rule speaks several times of one target, the key carries which time it is.
 */
export function derivedValues(design: Design): ReadonlyMap<string, DerivedValue> {
  const values = [
    ...design.machines.flatMap(valuesOfMachine),
    ...design.loops.map((loop) =>
      value(
        'ground loop',
        loop.points.join(', '),
        'loop',
        answered(loop.resistance, (ohm) => measured('resistance', ohm)),
      ),
    ),
    ...design.findings.map((each) =>
      value('finding', each.at, each.rule, said`${each.weight}: ${each.found}`, compared(each)),
    ),
  ];
  const keyed = new Map<string, DerivedValue>();
  for (const each of values) {
    const key = `${each.sort}|${each.at}|${each.name}`;
    let free = key;
    for (let time = 2; keyed.has(free); time++) free = `${key}|${time}`;
    keyed.set(free, each);
  }
  return keyed;
}

const known = new WeakMap<DesignedMachine, readonly DerivedValue[]>();

/** Told once of each designed machine, however many designs it stands in. */
function valuesOfMachine(machine: DesignedMachine): readonly DerivedValue[] {
  const values = known.get(machine) ?? ofMachine(machine);
  known.set(machine, values);
  return values;
}

function ofMachine({ stated, frequencies, points, limits }: DesignedMachine): readonly DerivedValue[] {
  return [
    ...frequencies.rows.map(({ line, cells }) =>
      value(
        'frequency',
        stated.name,
        line.name,
        saidTogether(
          cells.map((cell) => said`${answered(cell.frequency, (f) => measured('frequency', f))} at ${cell.state}`),
          ', ',
        ),
        compared(cells),
      ),
    ),
    ...limitValues(stated.name, limits?.boundaries),
    ...points.flatMap(ofPoint),
  ];
}

function ofPoint(designed: DesignedPoint): readonly DerivedValue[] {
  const { of, targets } = designed.point;
  return [
    ...targets.map((target) =>
      value(
        'target',
        of,
        target.name,
        said`from ${answered(target.smallest, measuredLevel)} to ${answered(target.largest, measuredLevel)} at ${answered(
          target.frequencies,
          (all) =>
            saidTogether(
              [...new Set([Math.min(...all), Math.max(...all)])].map((f) => measured('frequency', f)),
              '..',
            ),
        )}`,
        compared(target),
      ),
    ),
    ...(designed.limits === undefined ? [] : limitValues(of, designed.limits.boundaries)),
    ...chainValues(designed),
    ...(designed.appraisal?.judgements ?? []).map((each) => proofValue(of, each)),
    ...designed.budgets.map((each) =>
      value(
        'uncertainty',
        of,
        `${each.target}, ${each.entered} sensitivity`,
        said`±${answered(each.budget, (budget) => bareNumber(budget.expandedUncertainty * 100, 3))} %, promise ${answered(each.promise, (kept) => kept)}`,
        compared(each.tolerance),
      ),
    ),
    ...alarmValues(designed),
    ...designed.settings.sets.map(({ reasons: _, ...set }) =>
      value(
        'settings',
        of,
        set.name,
        said`up to ${measured('frequency', set.highestFrequency)}, ${set.lines} lines, ${bareNumber(set.recordLength, 4)} s, ${set.averages} averages`,
        compared(set),
      ),
    ),
    ...(designed.area === undefined ? [] : [value('hazardous area', of, 'comparison', designed.area.wording)]),
  ];
}

function proofValue(at: string, judgement: Judgement): DerivedValue {
  const { rule, target, outcome, margin } = judgement;
  const by = margin === undefined ? '' : said`, margin ${decibels(margin)}`;
  const name = target === undefined ? rule : `${rule} of ${target}`;
  return value('proof', at, name, said`${outcome}: ${reasoned(judgement)}${by}`, compared(judgement));
}

function limitValues(at: string, boundaries: DesignedPoint['boundaries'] | undefined): readonly DerivedValue[] {
  if (boundaries === undefined) return [];
  const says = answered(boundaries, ({ ab, bc, cd }) => saidTogether([ab, bc, cd].map(measuredLevel), ', '));
  return [value('limits', at, 'zone boundaries', says, compared(boundaries))];
}

function alarmValues({ point, alarms }: DesignedPoint): readonly DerivedValue[] {
  return (alarms?.register ?? []).flatMap((row) => {
    const delay =
      row.delay === undefined ? '' : said` after ${answered(row.delay, (seconds) => measured('time', seconds))}`;
    const scaled = [
      ...(row.current === undefined ? [] : [answered(row.current, (ampere) => measured('current', ampere, 5))]),
      ...(row.counts === undefined ? [] : [said`${answered(row.counts, (counts) => bareNumber(counts, 6))} counts`]),
      ...(row.voltage === undefined ? [] : [answered(row.voltage, measuredLevel)]),
    ];
    return [
      value('alarm', point.of, row.name, said`${answered(row.level, measuredLevel)}${delay}`, compared(row.level)),
      ...(scaled.length === 0
        ? []
        : [
            value(
              'scaling',
              point.of,
              row.name,
              saidTogether(scaled, ', '),
              compared([row.current, row.counts, row.voltage]),
            ),
          ]),
    ];
  });
}

function chainValues({ point, appraisal }: DesignedPoint): readonly DerivedValue[] {
  if (appraisal === undefined) return [];
  const { parts } = appraisal.prediction.chain;
  const part = (name: string, of: { readonly name: string; readonly sheet: Sheet<Fields> }): DerivedValue => {
    const sheet = writtenIn(of.sheet);
    return { ...value('chain', point.of, name, of.name, JSON.stringify(sheet)), sheet };
  };
  const length = (name: string, metres: Answer<number>) =>
    value(
      'chain',
      point.of,
      name,
      answered(metres, (known) => measured('length', known)),
    );
  return [
    part('transducer', parts.transducer),
    part('mount', parts.mount),
    part('cable', parts.cable),
    length('cable length', parts.cableLength),
    ...parts.inLine.map((each, place) => part(`in the line, place ${place + 1}`, each)),
    ...(parts.onward ?? []).flatMap(({ cable, length: metres, behind }) => [
      part(`cable behind place ${behind + 1}`, cable),
      length(`length of the cable behind place ${behind + 1}`, metres),
    ]),
    part('input', parts.input),
  ];
}

function writtenIn({ values }: Sheet<Fields>): Readonly<Record<string, string>> {
  const stated = Object.entries(values as Readonly<Record<string, Stated<unknown> | undefined>>);
  return Object.fromEntries(
    stated.flatMap(([field, entry]) => (entry === undefined ? [] : [[field, entry.known ? entry.written : 'unknown']])),
  );
}

function value(sort: DerivedSort, at: string, name: string, says: Said, beside = ''): DerivedValue {
  return { sort, at, name, says, beside };
}

type Told<T> = Answer<T> | Stated<T>;

function answered<T>(told: Told<T>, says: (value: T) => Said): Said {
  if (told.known) return says(told.value);
  return 'missing' in told ? `unknown (${theMissing(told.missing)})` : 'unknown';
}

/** Everything in it, in full digits; how to work something out is no part of what was worked out. */
function compared(value: unknown): string {
  return JSON.stringify(value, (_, each) => (typeof each === 'bigint' ? String(each) : each));
}
