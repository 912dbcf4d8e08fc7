import {
  type Judgement,
  type MeasuringPoint,
  type Policy,
  type Prediction,
  type Showing,
  showDecibels,
  showNumber,
  type Target,
} from '@soundpost/core';

/** How a number came about: the formula, the same with the numbers put in, and what the letters stand for. */
export interface Derivation {
  readonly formula: string;
  /** Absent where there is nothing to compute. */
  readonly substituted?: string;
  readonly notes?: readonly string[];
  /** The working it was evaluated with, and what went into it: to be worked again by whoever doubts it. */
  readonly worked?: Worked;
}

export interface Worked {
  readonly working: string;
  readonly output: string;
  readonly values: Readonly<Record<string, unknown>>;
}

/** What a derivation may look at: one judgement of one predicted chain. */
export interface Judged {
  readonly point: MeasuringPoint;
  readonly prediction: Prediction;
  readonly policy: Policy;
  readonly judgement: Judgement;
  readonly target: Target | undefined;
  readonly showing: Showing;
}

export type Derive = (judged: Judged) => readonly Derivation[];

export function ratioNumber(value: number, { decimal }: Showing, digits = 5): string {
  return showNumber(value, digits, decimal);
}

/** Rules do not tell a margin beyond this. */
const plenty = 60;

/** The margin of a limit over what was found, in decibels. */
export function marginDerivation(judged: Judged, limit: string, found: string): readonly Derivation[] {
  const { margin } = judged.judgement;
  if (margin === undefined) return [];
  // An error has a sign, and its limit holds against its size.
  const signed = /^[−-]/.test(found);
  const [named, size] = signed ? ['|found|', `|${found}|`] : ['found', found];
  if (margin >= plenty) {
    return [
      {
        formula: `margin = min(20 · lg(limit / ${named}), ${plenty} dB)`,
        substituted: `margin = min(20 · lg(${limit} / ${size}), ${plenty} dB) = ${showDecibels(margin)}`,
        notes: [`beyond ${plenty} dB a margin says no more than plenty`],
      },
    ];
  }
  return [
    {
      formula: `margin = 20 · lg(limit / ${named})`,
      substituted: `margin = 20 · lg(${limit} / ${size}) = ${showDecibels(margin)}`,
    },
  ];
}

/** Whether a formula gives what the core found: one that does not is never shown. */
export function gives(computed: number, found: number): boolean {
  return Math.abs(computed - found) <= 1e-9 * Math.max(Math.abs(computed), Math.abs(found), 1e-12);
}
