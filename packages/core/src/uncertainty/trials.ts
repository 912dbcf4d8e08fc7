import { type Answer, answer, type Missing, Refusal, unanswered } from '../quantity/index.ts';
import type { Contribution } from './contribution.ts';
import { type Correlation, choleskyFactor, correlatedGroups, correlationMatrix } from './correlation.ts';
import { requireLevel } from './coverage.ts';
import { distributionNamed } from './distribution/distributions.ts';
import type { NumericModel } from './propagation.ts';
import { type Random, randomFrom } from './random.ts';
import { batches, type Trials, trialsSummary } from './trials-summary.ts';

export const usualTrials = 1_000_000;
const fewestTrials = 1000;
const mostTrials = 10_000_000;

export interface TrialsRequest {
  readonly model: NumericModel;
  readonly inputs: readonly Contribution[];
  readonly correlations?: readonly Correlation[];
  readonly level: number;
  readonly count?: number;
  readonly seed: number;
}

/**
 * Propagation of distributions by trials: draws every input `count` times, computes the model each time, and takes
 * mean, standard deviation and coverage intervals of the results. Source: JCGM 101, clause 7. Correlated inputs are
 * drawn jointly where all of them are normal, or Student's t of equal degrees of freedom. Unknown where the inputs do not say
 * how they are distributed together, where a standard deviation does not exist, or where the model fails in a trial.
 */
export function trials(request: TrialsRequest): Answer<Trials> {
  const { model, inputs, level, seed } = request;
  const count = request.count ?? usualTrials;
  requireLevel(level);
  requireTrials(count, seed, level);
  const correlations = request.correlations ?? [];
  const missing = [...withoutDeviation(inputs), ...withoutJointDistribution(inputs, correlations)];
  if (missing.length > 0) return unanswered(missing);
  const draw = drawing(inputs, correlations, randomFrom(seed));
  const values = new Float64Array(inputs.length);
  const results = new Float64Array(count);
  let failed = 0;
  for (let trial = 0; trial < count; trial++) {
    draw(values);
    const result = model(values);
    results[trial] = result;
    if (!Number.isFinite(result)) failed++;
  }
  if (failed > 0) return unanswered([{ of: 'the model', what: `a finite value in ${failed} of ${count} trials` }]);
  const found = trialsSummary(results, { count, seed, level });
  if (Number.isFinite(found.mean) && Number.isFinite(found.standardDeviation)) return answer(found);
  return unanswered([{ of: 'the model', what: 'results within the range of numbers' }]);
}

/** Probability that the result lies below a limit, as the trials found it. */
export function fractionBelow(limit: number, of: Trials): number {
  let low = 0;
  let high = of.results.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (of.results[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low / of.results.length;
}

/** Refuses a number of trials that cannot carry its level of confidence, and a seed that is no 32-bit number. */
export function requireTrials(count: number, seed: number, level: number): void {
  const fewest = Math.max(fewestTrials, Math.ceil((10 * batches) / (1 - level)));
  if (!Number.isSafeInteger(count) || count < fewest || count > mostTrials) {
    throw new Refusal({
      read: `${count} trials`,
      expected: `a whole number of trials from ${fewest} (for a level of ${level}) to ${mostTrials}`,
    });
  }
  if (!Number.isSafeInteger(seed) || seed < 0 || seed > 4_294_967_295) {
    throw new Refusal({ read: `seed ${seed}`, expected: 'a whole number from 0 to 4294967295' });
  }
}

function withoutDeviation(inputs: readonly Contribution[]): readonly Missing[] {
  return inputs
    .filter((each) => distributionNamed(each.distribution).standardDeviation(each) === undefined)
    .map((each) => ({
      of: `input ${each.name}`,
      what: `more than 2 degrees of freedom (it has ${each.degreesOfFreedom}, where Student's t has no standard deviation)`,
    }));
}

function withoutJointDistribution(
  inputs: readonly Contribution[],
  correlations: readonly Correlation[],
): readonly Missing[] {
  return correlatedGroups(inputs, correlations)
    .map((group) => group.map((place) => inputs[place]!))
    .filter((group) => group.length > 1 && !drawnJointly(group))
    .map((group) => ({
      of: `inputs ${group.map((each) => each.name).join(', ')}`,
      what: "a joint distribution (they are correlated, and not all normal or Student's t of equal degrees of freedom)",
    }));
}

function drawnJointly(group: readonly Contribution[]): boolean {
  const [first] = group;
  if (distributionNamed(first!.distribution).commonFactor === undefined) return false;
  const alike = group.every((each) => each.distribution === first!.distribution);
  const needed = distributionNamed(first!.distribution).needsDegreesOfFreedom === true;
  return alike && (!needed || group.every((each) => each.degreesOfFreedom === first!.degreesOfFreedom));
}

/** Fills the values of one trial; every input is drawn in the order of its group. */
function drawing(inputs: readonly Contribution[], correlations: readonly Correlation[], random: Random) {
  const matrix = correlationMatrix(inputs, correlations);
  const draws = correlatedGroups(inputs, correlations).map((group) => {
    const members = group.map((place) => inputs[place]!);
    const [only] = members;
    const [place] = group;
    const shape = distributionNamed(only!.distribution);
    if (members.length === 1) {
      const deviation = shape.deviations(only!, random);
      const { estimate } = only!;
      return (values: Float64Array) => {
        values[place!] = estimate + deviation();
      };
    }
    const among = group.map((i) => group.map((j) => matrix[i]![j]!));
    const factor = choleskyFactor(among, members);
    const common = shape.commonFactor!(only!.degreesOfFreedom, random);
    const independent = new Float64Array(group.length);
    return (values: Float64Array) => {
      for (let i = 0; i < group.length; i++) independent[i] = random.normal();
      const shared = common();
      for (let i = 0; i < group.length; i++) {
        let deviation = 0;
        for (let j = 0; j < group.length; j++) deviation += factor[i]![j]! * independent[j]!;
        values[group[i]!] = members[i]!.estimate + members[i]!.standardUncertainty * deviation * shared;
      }
    };
  });
  return (values: Float64Array) => {
    for (const each of draws) each(values);
  };
}
