import {
  type Appraisal,
  type Clause,
  type Judgement,
  type MeasuringPoint,
  type Policy,
  reason,
  type Showing,
  showDecibels,
  showMeasure,
  showQuantity,
  theMissing,
} from '@soundpost/core';
import { ruleTextOf } from '../finding/rule-texts.ts';
import type { Derivation } from './derivation.ts';
import { derivationOf } from './derivations.ts';
import type { NamedNumber } from './explained.ts';

/** A judgement told in three depths: a sentence, the numbers, the formulas with the numbers put in and whose they are. */
export interface Explanation {
  readonly judgement: Judgement;
  readonly title: string;
  /** What the rule asks, and why. */
  readonly prose: string;
  readonly sentence: string;
  readonly numbers: readonly NamedNumber[];
  readonly derivations: readonly Derivation[];
  readonly sources: readonly Clause[];
}

export function explanation(
  judgement: Judgement,
  { prediction }: Appraisal,
  point: MeasuringPoint,
  policy: Policy,
  showing: Showing,
): Explanation {
  const rule = ruleTextOf(judgement.rule);
  const target = point.targets.find((each) => each.name === judgement.target);
  const judged = { point, prediction, policy, judgement, target, showing };
  return {
    judgement,
    title: rule?.title ?? judgement.rule,
    prose: rule?.prose ?? '',
    sentence: sentence(reason(judgement, showing)),
    numbers: numbersOf(judgement, showing),
    derivations: judgement.missing === undefined ? derivationOf(judged) : [],
    sources: rule?.sources ?? [],
  };
}

function numbersOf(judgement: Judgement, showing: Showing): readonly NamedNumber[] {
  const { found, limit, frequency, margin, needs, missing, outcome } = judgement;
  return [
    { name: 'found', shown: showMeasure(found, showing) },
    { name: 'limit', shown: showMeasure(limit, showing) },
    ...(frequency === undefined ? [] : [{ name: 'at', shown: showQuantity('frequency', frequency, showing) }]),
    ...(margin === undefined ? [] : [{ name: 'margin', shown: marginText(margin, showing) }]),
    ...(needs === undefined || outcome === 'meets' ? [] : [{ name: 'to pass', shown: showMeasure(needs, showing) }]),
    ...(missing === undefined || missing.length === 0 ? [] : [{ name: 'unknown', shown: theMissing(missing) }]),
  ];
}

/** Beyond 60 dB a margin says no more than plenty. */
function marginText(margin: number, { decimal }: Showing): string {
  return margin >= 60 ? 'over 60 dB' : showDecibels(margin, 1, decimal);
}

function sentence(text: string): string {
  const capital = text.slice(0, 1).toUpperCase() + text.slice(1);
  return /[.!?…]$/.test(capital) ? capital : `${capital}.`;
}
