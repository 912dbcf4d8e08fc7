import { type Fraction, fraction, isZero, showFraction, showNumber, toNumber } from '../quantity/index.ts';

/** A shaft that turns, and how often its speed counts; speeds carry their sense of rotation. */
export interface Turning {
  readonly shaft: string;
  readonly times: number;
  readonly exact?: Fraction;
}

/** What a frequency is counted in. A rotation is the size of a sum of shaft speeds: |Σ times · speed|. */
export type FrequencySource =
  | { readonly kind: 'rotation'; readonly of: readonly Turning[] }
  | { readonly kind: 'line-frequency'; readonly motor: string }
  | { readonly kind: 'slip-frequency'; readonly motor: string }
  | { readonly kind: 'constant' };

/** So many times a source; `exact` where the number is known without rounding. */
export interface FrequencyTerm {
  readonly times: number;
  readonly exact?: Fraction;
  readonly of: FrequencySource;
}

/** A frequency as a sum over its sources: f = |Σ times · source|. */
export type FrequencyForm = readonly FrequencyTerm[];

/** A number that is known without rounding: a count, or a ratio of counts. */
export type Exact = number | Fraction;

/** Reads a whole number or a fraction as an exact factor. */
export function exactFactor(factor: Exact): Fraction {
  return typeof factor === 'number' ? fraction(factor) : factor;
}

export function turning(shaft: string): FrequencySource {
  return { kind: 'rotation', of: [{ shaft, times: 1, exact: fraction(1) }] };
}

/** The speed of one shaft as seen from another. */
export function relativeTurning(shaft: string, seenFrom: string): FrequencySource {
  return {
    kind: 'rotation',
    of: [
      { shaft, times: 1, exact: fraction(1) },
      { shaft: seenFrom, times: -1, exact: fraction(-1) },
    ],
  };
}

/** How fast two members turn against each other, either of which may stand still. */
export function turningBetween(one: string, other: string): FrequencySource {
  if (one === fixed) return turning(other);
  return other === fixed ? turning(one) : relativeTurning(one, other);
}

/** A body that turns with a share of each of two shafts, as a cage between two rings does. */
export function sharedTurning(shares: readonly { readonly shaft: string; readonly times: number }[]): FrequencySource {
  return { kind: 'rotation', of: shares };
}

export function lineFrequencyOf(motor: string): FrequencySource {
  return { kind: 'line-frequency', motor };
}

export function slipFrequencyOf(motor: string): FrequencySource {
  return { kind: 'slip-frequency', motor };
}

export const constant: FrequencySource = { kind: 'constant' };

/** An exact number of times a source. */
export function counted(factor: Exact, of: FrequencySource): FrequencyTerm {
  const exact = exactFactor(factor);
  return { times: toNumber(exact), exact, of };
}

/** A measured or computed number of times a source. */
export function measuredTimes(times: number, of: FrequencySource): FrequencyTerm {
  return { times, of };
}

/** The form as an engineer would write it: `40 × motor + 2 × line frequency`. */
export function showForm(form: FrequencyForm): string {
  return form
    .map((term, index) => {
      const negative = term.times < 0;
      const sign = index === 0 ? (negative ? '−' : '') : negative ? ' − ' : ' + ';
      return sign + showTerm(term);
    })
    .join('');
}

function showTerm(term: FrequencyTerm): string {
  const factor = showFactor(term);
  if (term.of.kind === 'constant') return `${showNumber(Math.abs(term.times))} Hz`;
  return factor === '1' ? sourceWords(term.of) : `${factor} × ${sourceWords(term.of)}`;
}

function showFactor(term: { readonly times: number; readonly exact?: Fraction }): string {
  if (term.exact === undefined) return showNumber(Math.abs(term.times));
  const negative = term.exact.numerator < 0n;
  return showFraction(negative ? { ...term.exact, numerator: -term.exact.numerator } : term.exact);
}

function sourceWords(source: FrequencySource): string {
  if (source.kind === 'rotation') return rotationWords(source.of);
  if (source.kind === 'constant') return '1 Hz';
  return source.kind === 'line-frequency' ? `line frequency of ${source.motor}` : `slip frequency of ${source.motor}`;
}

function rotationWords(of: readonly Turning[]): string {
  const [first, second] = of;
  if (second === undefined || first === undefined) return first?.shaft ?? '';
  const relative = of.length === 2 && first.times === 1 && second.times === -1;
  if (relative) return second.shaft === fixed ? first.shaft : `(${first.shaft} against ${second.shaft})`;
  const moving = of.filter((turn) => turn.shaft !== fixed && !(turn.exact !== undefined && isZero(turn.exact)));
  const words = moving.map((turn) => `${showNumber(turn.times)} × ${turn.shaft}`).join(' + ');
  return moving.length === 1 ? words : `(${words})`;
}

/** The name that stands for what does not turn: housing, foundation, a ring held fast. */
export const fixed = 'fixed';
