import { type Judgement, type Outcome, reason, type Showing, showDecibels, showMeasure } from '@soundpost/core';
import { type Line, paragraph } from '../layout/line.ts';
import { outcomeMark } from '../layout/mark.ts';
import type { Manner } from '../manner.ts';

/** `signal to noise` from `chain/signal-to-noise`. */
export function shortRule(id: string): string {
  return id.slice(id.lastIndexOf('/') + 1).replaceAll('-', ' ');
}

export function marginText(margin: number, { decimal }: Showing): string {
  return margin >= 60 ? 'over 60 dB' : showDecibels(margin, 1, decimal);
}

/** A judgement in one paragraph: sign, reason with value, limit and frequency, margin, what would have to change. */
export function judgementLines(judgement: Judgement, { showing, width }: Manner): readonly Line[] {
  const margin = judgement.margin === undefined ? '' : `; margin ${marginText(judgement.margin, showing)}`;
  const needs =
    judgement.needs === undefined || judgement.outcome === 'meets'
      ? ''
      : `. What would have to change: ${showMeasure(judgement.needs, showing)}`;
  const text = `${outcomeMark[judgement.outcome]} ${reason(judgement, showing)}${margin}${needs}. [${judgement.rule}]`;
  return paragraph(`    ${text}`, width, '  ');
}

const outcomeWords: Readonly<Record<Outcome, string>> = {
  fails: 'fails',
  'cannot tell': 'cannot tell',
  warns: 'meets, with a warning',
  meets: 'meets',
};

export function outcomeText(outcome: Outcome): string {
  return `${outcomeMark[outcome]} ${outcomeWords[outcome]}`;
}

export const legend =
  '✓ meets, ! meets with a warning, ? cannot tell, ✗ fails; dB from the limit, the least margin of the rules that judge.';
