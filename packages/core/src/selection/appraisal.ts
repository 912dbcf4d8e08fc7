import { type ChainParts, measuringChain } from '../chain/chain.ts';
import { type Prediction, prediction } from '../chain/prediction.ts';
import { type Judgement, type Outcome, outcomes } from '../chain/rules/rule.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Policy } from '../demand/policy.ts';
import { appraisalRules } from './rules.ts';

/** One chain judged against everything its point must capture. */
export interface Appraisal {
  readonly point: MeasuringPoint;
  readonly prediction: Prediction;
  readonly judgements: readonly Judgement[];
  readonly outcome: Outcome;
  /** The judgement with the least margin among those met: the requirement that would fail first. */
  readonly nearest: Judgement | undefined;
}

export function appraisal(point: MeasuringPoint, parts: ChainParts, policy: Policy): Appraisal {
  const predicted = prediction(measuringChain(parts));
  const judgements = appraisalRules.flatMap((each) => each.judge({ point, prediction: predicted, policy }));
  return {
    point,
    prediction: predicted,
    judgements,
    outcome: outcomeOf(point, judgements),
    nearest: nearestRequirement(judgements),
  };
}

/** The worst outcome decides. A desirable target that fails is a warning, not a failure of the chain. */
export function outcomeOf(point: MeasuringPoint, judgements: readonly Judgement[]): Outcome {
  const desirable = new Set(point.targets.filter((each) => each.weight === 'desirable').map((each) => each.name));
  const counted = judgements.map((judgement): Outcome => {
    const minor = judgement.target !== undefined && desirable.has(judgement.target);
    return minor && judgement.outcome !== 'meets' ? 'warns' : judgement.outcome;
  });
  return outcomes.find((outcome) => counted.includes(outcome)) ?? 'meets';
}

function nearestRequirement(judgements: readonly Judgement[]): Judgement | undefined {
  const met = judgements.filter((each) => each.margin !== undefined && each.margin >= 0 && each.outcome !== 'fails');
  return met.reduce<Judgement | undefined>(
    (least, each) => (least === undefined || each.margin! < least.margin! ? each : least),
    undefined,
  );
}

/** Everything that fails, in the order of the rules. */
export function failures(appraised: Appraisal): readonly Judgement[] {
  return appraised.judgements.filter((each) => each.outcome === 'fails');
}

/** Least margin in decibels over all judgements that have one; failures are negative. */
export function leastMargin(appraised: Appraisal): number {
  return appraised.judgements.reduce((least, each) => Math.min(least, each.margin ?? least), largestMargin);
}

const largestMargin = 60;

/** One cell of the matrix candidates × targets: the judgement that decides, and all that were made. */
export interface Cell {
  readonly target: string;
  readonly outcome: Outcome;
  readonly decides: Judgement | undefined;
  readonly judgements: readonly Judgement[];
}

/** Per target the worst judgement, and among equals the one with the least margin. */
export function cells(appraised: Appraisal): readonly Cell[] {
  return appraised.point.targets.map((target) =>
    cellOf(
      target.name,
      appraised.judgements.filter((each) => each.target === target.name),
    ),
  );
}

/** What was judged of the chain and of no target in particular. */
export function chainCell(appraised: Appraisal): Cell {
  return cellOf(
    'the chain',
    appraised.judgements.filter((each) => each.target === undefined),
  );
}

function cellOf(target: string, judgements: readonly Judgement[]): Cell {
  const decides = [...judgements].sort(
    (a, b) =>
      outcomes.indexOf(a.outcome) - outcomes.indexOf(b.outcome) ||
      (a.margin ?? largestMargin) - (b.margin ?? largestMargin),
  )[0];
  return { target, outcome: decides?.outcome ?? 'meets', decides, judgements };
}
