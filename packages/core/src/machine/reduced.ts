import {
  type Answer,
  answer,
  divided,
  type Fraction,
  fraction,
  fromAll,
  isZero,
  multiplied,
  plus,
  sameFraction,
  thenAnswer,
  toNumber,
} from '../quantity/index.ts';

/**
 * A frequency over what is independent at this train: the reference speed, a line frequency, a slip frequency, 1 Hz.
 * Two frequencies that are one at every speed have the same reduced form.
 */
export interface ReducedTerm {
  /** `speed`, `line motor`, `slip motor`, `constant`. */
  readonly of: string;
  readonly times: number;
  readonly exact?: Fraction;
  /** What the factor may be, where a belt slips. */
  readonly low: number;
  readonly high: number;
}
export type Reduced = readonly ReducedTerm[];

export const referenceSpeed = 'speed';
export const oneHertz = 'constant';
export const lineKey = (motor: string) => `line ${motor}`;
export const slipKey = (motor: string) => `slip ${motor}`;

export function reducedTerm(of: string, factor: number | Fraction): ReducedTerm {
  if (typeof factor === 'number') return { of, times: factor, low: factor, high: factor };
  const times = toNumber(factor);
  return { of, times, exact: factor, low: times, high: times };
}

/** A factor with bounds and, where it is exact, its fraction. */
export interface Factor {
  readonly times: number;
  readonly exact?: Fraction;
  readonly low: number;
  readonly high: number;
}

export function factorOf(times: number, exact?: Fraction): Factor {
  return { times, ...(exact === undefined ? {} : { exact }), low: times, high: times };
}

export function timesReduced(factor: Factor, form: Reduced): Reduced {
  return form.map((term) => {
    const corners = [factor.low * term.low, factor.low * term.high, factor.high * term.low, factor.high * term.high];
    const exact =
      factor.exact === undefined || term.exact === undefined ? undefined : multiplied(factor.exact, term.exact);
    return {
      of: term.of,
      times: exact === undefined ? factor.times * term.times : toNumber(exact),
      ...(exact === undefined ? {} : { exact }),
      low: Math.min(...corners),
      high: Math.max(...corners),
    };
  });
}

/** The sum, one term for each source; terms that cancel exactly are left out. */
export function sumReduced(...forms: readonly Reduced[]): Reduced {
  const terms = new Map<string, ReducedTerm>();
  for (const term of forms.flat()) {
    const before = terms.get(term.of);
    terms.set(term.of, before === undefined ? term : added(before, term));
  }
  return [...terms.values()].filter((term) => !(term.exact === undefined ? term.times === 0 : isZero(term.exact)));
}

function added(a: ReducedTerm, b: ReducedTerm): ReducedTerm {
  const exact = a.exact === undefined || b.exact === undefined ? undefined : plus(a.exact, b.exact);
  return {
    of: a.of,
    times: exact === undefined ? a.times + b.times : toNumber(exact),
    ...(exact === undefined ? {} : { exact }),
    low: a.low + b.low,
    high: a.high + b.high,
  };
}

export function differenceReduced(a: Reduced, b: Reduced): Reduced {
  return sumReduced(a, timesReduced(factorOf(-1, fraction(-1)), b));
}

/** Whether two forms are one at every speed: exactly where both are exact, else to twelve digits. */
export function sameReduced(a: Reduced, b: Reduced): boolean {
  return differenceReduced(a, b).every((term) => {
    const scale = a.find((each) => each.of === term.of)?.times ?? 0;
    return term.exact === undefined && Math.abs(term.times) <= 1e-12 * Math.abs(scale);
  });
}

/** How many times `b` goes into `a` at every speed, exactly; nothing where the two do not keep step. */
export function exactQuotient(a: Reduced, b: Reduced): Fraction | undefined {
  const quotients = a.map(({ of, exact }) => {
    const other = b.find((each) => each.of === of)?.exact;
    return exact === undefined || other === undefined || isZero(other) ? undefined : divided(exact, other);
  });
  const [first] = quotients;
  const alike = quotients.every((each) => each !== undefined && first !== undefined && sameFraction(each, first));
  return alike && a.length === b.length ? first : undefined;
}

/** Adds up answers to forms. */
export function sumOfAnswers(forms: readonly Answer<Reduced>[]): Answer<Reduced> {
  return forms.reduce<Answer<Reduced>>(
    (total, each) =>
      thenAnswer(
        fromAll({ total, each }, (known) => known),
        (known) => answer(sumReduced(known.total, known.each)),
      ),
    answer([]),
  );
}
