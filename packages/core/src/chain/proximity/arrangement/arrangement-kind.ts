import { type Finding, finding, type Weight } from '../../../finding/finding.ts';
import { type Measure, measured, type Said, said } from '../../../finding/measure.ts';
import {
  type Answer,
  answerOf,
  type Fields,
  fromAll,
  kebab,
  type QuantityName,
  type Sheet,
  type Span,
  type Stated,
} from '../../../quantity/index.ts';
import type { Clause } from '../../../source/source.ts';
import type { Derived } from '../../../uncertainty/contribution.ts';
import type { PartKind } from '../../part-kind.ts';

/** What the chosen set of probe, cable and oscillator-demodulator says of itself, SI. */
export interface ProbeSystem {
  readonly scaleFactor: number;
  /** Gap over which it is linear. */
  readonly linearRange: Span<'length'>;
  readonly corner: number;
}

/** What stands around the probes of a point: the chosen set, the shaft and its bearing, the speeds. SI. */
export interface ProbeSurroundings {
  readonly at: string;
  readonly system: Answer<ProbeSystem>;
  readonly shaftDiameter: Answer<number>;
  /** Diametral. */
  readonly clearance: Answer<number>;
  /** Of the shaft the probes look at, in hertz. */
  readonly slowest: Answer<number>;
  readonly fastest: Answer<number>;
  /** Lowest critical speed the train states for that shaft, in hertz. */
  readonly firstCritical: Answer<number>;
}

/** One number that follows from an arrangement: a gap, a voltage, a time. */
export interface ProbeRow {
  readonly name: string;
  readonly value: Answer<Measure>;
  readonly because: Said;
  /** The formula, and the same with the numbers put in. */
  readonly derived: Answer<Derived>;
}

/** A kind of thing that probes do at a point: one file, one line in `kinds.ts`. */
export interface ArrangementKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  rows(sheet: Sheet<F>, around: ProbeSurroundings): readonly ProbeRow[];
  /** What is missing, exchanged or out of range. */
  doubts(sheet: Sheet<F>, around: ProbeSurroundings): readonly Finding[];
}

export function arrangementKind<const Kind extends string, F extends Fields>(
  definition: ArrangementKind<Kind, F>,
): ArrangementKind<Kind, F> {
  return definition;
}

/** Voltages between which an eddy-current set on −24 V still follows its line. Source: API 670 practice, from memory. */
export const usableVoltages = { low: -20, high: -1.5 } as const;

/** A row that shows one computed quantity. */
export function rowOf(
  name: string,
  quantity: QuantityName,
  value: Answer<number>,
  because: Said,
  derived: Answer<Derived>,
): ProbeRow {
  return { name, value: fromAll({ value }, (known) => measured(quantity, known.value)), because, derived };
}

/** A formula, and what stands behind its equals sign once the numbers are put in. */
export function derivedFrom<A extends Readonly<Record<string, Answer<unknown>>>>(
  formula: string,
  answers: A,
  right: (known: { readonly [K in keyof A]: A[K] extends Answer<infer T> ? T : never }) => Measure,
): Answer<Derived> {
  const left = formula.slice(0, formula.indexOf('='));
  return fromAll(answers, (known) => ({ formula, substituted: said`${left}= ${right(known)}` }));
}

export type Says = Pick<Finding, 'found' | 'limit' | 'because' | 'remedy'> & { readonly asks?: Said };

/** The findings of one kind, each named `proximity/…`, at one place. */
export function saying(at: string, sources: readonly Clause[]) {
  return (rule: string, weight: Weight, says: Says): Finding =>
    finding({ rule: `proximity/${rule}`, weight, at, sources, ...says });
}

/** A question for each field that is not stated: what it is, and why it decides. */
export function askedFor<F extends Fields>(
  sheet: Sheet<F>,
  around: ProbeSurroundings,
  asked: Readonly<Partial<Record<keyof F & string, { readonly asks: string; readonly because: string }>>>,
  sources: readonly Clause[],
): readonly Finding[] {
  const say = saying(around.at, sources);
  return Object.entries(asked).flatMap(([name, why]) => {
    const entry = sheet.values[name] as Stated<unknown> | undefined;
    if (why === undefined || entry?.known === true) return [];
    const spoken = kebab(name).replaceAll('-', ' ');
    return [
      say('not-stated', 'question', {
        found: `the ${spoken} is not known`,
        limit: `a stated ${spoken}`,
        because: why.because,
        remedy: [`state '${kebab(name)}'`],
        asks: why.asks,
      }),
    ];
  });
}

/** A field of a sheet as an answer, named by whose it is. */
export function statedIn<F extends Fields, K extends keyof F & string>(
  sheet: Sheet<F>,
  name: K,
): Answer<NonNullable<Sheet<F>['values'][K]> extends Stated<infer T> ? T : never> {
  return answerOf(sheet.values[name] as Stated<never> | undefined, sheet.of, kebab(name).replaceAll('-', ' '));
}
