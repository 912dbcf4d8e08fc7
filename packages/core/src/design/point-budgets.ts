import type { Prediction } from '../chain/prediction.ts';
import type { Allowances, SensitivityEntered } from '../chain/reading-allowances.ts';
import { promise, readingUncertainty } from '../chain/reading-uncertainty.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { sees, type Target } from '../demand/target.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { bareNumber, measuredTolerance, type Said, said, saidTogether, showMeasure } from '../finding/measure.ts';
import { type Answer, fromAll, type Level, type Motion, type Tolerance, thenAnswer } from '../quantity/index.ts';
import { jcgm100 } from '../source/index.ts';
import { clause } from '../source/source.ts';
import type { Budget } from '../uncertainty/budget.ts';
import { trials } from '../uncertainty/trials.ts';

/** How truly one target is read with one way of entering the sensitivity, and whether that keeps its promise. */
export interface TargetBudget {
  readonly target: string;
  readonly entered: SensitivityEntered;
  readonly budget: Answer<Budget>;
  readonly tolerance: Answer<Tolerance>;
  readonly promise: Answer<'kept' | 'not proven'>;
  /** The same by trials: half the shortest 95 % interval and its ends, and the seed that repeats it. */
  readonly trials: Answer<{
    readonly halfWidth: number;
    readonly low: number;
    readonly high: number;
    readonly seed: number;
    readonly count: number;
  }>;
}

export type PointBudgets = readonly TargetBudget[];

/** Enough to tell an expanded uncertainty to a per cent of itself, few enough to be run for every target. */
const trialCount = 20_000;
const ways: readonly SensitivityEntered[] = ['individual', 'nominal'];

/**
 * Both budgets of every target that has an amplitude and a chain that can read it. `reading`: what the point reads at speed,
 * of which run-out under a probe is a share.
 */
export function pointBudgets(
  point: MeasuringPoint,
  prediction: Prediction,
  allowances: Allowances,
  seed: number,
  reading?: Level<Motion>,
): PointBudgets {
  const ran: Trials = new Map();
  return point.targets
    .filter((target) => !target.observable.atRest && sees(prediction.chain.transducer.reference, target.reference))
    .flatMap((target) =>
      ways.map((entered) => targetBudget(target, entered, point, prediction, allowances, seed, reading, ran)),
    );
}

function targetBudget(
  target: Target,
  entered: SensitivityEntered,
  point: MeasuringPoint,
  prediction: Prediction,
  allowances: Allowances,
  seed: number,
  reading: Level<Motion> | undefined,
  ran: Trials,
): TargetBudget {
  const budget = readingUncertainty(target, point, prediction, allowances, entered, reading);
  return {
    target: target.name,
    entered,
    budget,
    tolerance: target.tolerance,
    promise: fromAll({ budget, tolerance: target.tolerance }, (known) => promise(known.tolerance, known.budget)),
    trials: thenAnswer(budget, (known) => checkedByTrials(known, seed, ran)),
  };
}

/** Trials already run at a point, by the widths they were run with: targets of one chain often share them all. */
type Trials = Map<string, TargetBudget['trials']>;

function checkedByTrials(budget: Budget, seed: number, ran: Trials): TargetBudget['trials'] {
  const key = budget.lines.map((line) => `${line.contribution.distribution} ${line.uncertainty}`).join('; ');
  const before = ran.get(key);
  if (before !== undefined) return before;
  const result = halfOfTheShortest(budget, seed);
  ran.set(key, result);
  return result;
}

function halfOfTheShortest(budget: Budget, seed: number): TargetBudget['trials'] {
  const inputs = budget.lines.map((line) => line.contribution);
  const sum = (values: ArrayLike<number>) => {
    let total = 0;
    for (let index = 0; index < values.length; index++) total += values[index]!;
    return total;
  };
  return fromAll({ run: trials({ model: sum, inputs, level: 0.95, count: trialCount, seed }) }, ({ run }) => ({
    halfWidth: (run.shortest.high - run.shortest.low) / 2,
    low: run.shortest.low,
    high: run.shortest.high,
    seed,
    count: trialCount,
  }));
}

/** What the budgets of a point mean for its promises, said once for each way of entering the sensitivity. */
export function budgetFindings(budgets: PointBudgets, at: string): readonly Finding[] {
  const open = (entered: SensitivityEntered) =>
    budgets.filter((each) => each.entered === entered && each.promise.known && each.promise.value === 'not proven');
  const [evenCalibrated, nominal] = [open('individual'), open('nominal')];
  const onlyNominal = nominal.filter((each) => !evenCalibrated.some((other) => other.target === each.target));
  const found = (list: PointBudgets) =>
    saidTogether(
      list.map(
        (each) =>
          said`${each.target} ±${bareNumber(each.budget.known ? each.budget.value.expandedUncertainty * 100 : 0, 3)} %`,
      ),
      ', ',
    );
  const limit = (list: PointBudgets) => tolerancesOf(list, 'unknown');
  const sources = [clause(jcgm100, '5.1.6')];
  return [
    ...unknownBudgets(budgets, at),
    ...(evenCalibrated.length === 0
      ? []
      : [
          finding({
            rule: 'design/accuracy-not-proven',
            weight: 'question',
            at,
            found: said`expanded uncertainty (k = 2) even with the individual calibration: ${found(evenCalibrated)}`,
            limit: limit(evenCalibrated),
            because: 'The reading may lie outside what was promised although every part does what its sheet says.',
            remedy: ['reduce the largest contribution of the budget', 'widen the promise, by agreement with its owner'],
            sources,
            asks: 'Which is to give way: the promise, or the largest contribution?',
          }),
        ]),
    ...(onlyNominal.length === 0
      ? []
      : [
          finding({
            rule: 'design/nominal-sensitivity',
            weight: 'warns',
            at,
            found: said`expanded uncertainty (k = 2) with the nominal sensitivity: ${found(onlyNominal)}`,
            limit: limit(onlyNominal),
            because:
              'The spread between pieces alone breaks the promise; with the certificate of this piece it is kept.',
            remedy: ['enter the sensitivity from the calibration certificate of this piece'],
            sources,
          }),
        ]),
  ];
}

/** The tolerances promised, each once. */
function tolerancesOf(list: PointBudgets, otherwise: string): Said {
  const all = list.map(({ tolerance }) => (tolerance.known ? measuredTolerance(tolerance.value) : otherwise));
  return saidTogether([...new Map(all.map((each) => [showMeasure(each), each])).values()], ', ');
}

/** A promise whose uncertainty cannot be worked out is not kept by silence: what is missing is asked, once. */
function unknownBudgets(budgets: PointBudgets, at: string): readonly Finding[] {
  const unknown = budgets.filter((each) => each.entered === 'nominal' && !each.budget.known && each.tolerance.known);
  if (unknown.length === 0) return [];
  const missing = unknown.flatMap((each) => (each.budget.known ? [] : each.budget.missing));
  const asked = [...new Set(missing.map((each) => `the ${each.what} of ${each.of}`))];
  return [
    finding({
      rule: 'design/accuracy-unknown',
      weight: 'question',
      at,
      found: `uncertainty not known: ${unknown.map((each) => each.target).join(', ')}`,
      limit: tolerancesOf(unknown, ''),
      because: 'Whether the reading keeps the accuracy that was promised cannot be told without it.',
      remedy: [
        'state what is missing, from data sheet or certificate',
        'state it as unknown with its bounds and who could answer',
      ],
      sources: [clause(jcgm100, '5.1.6')],
      asks: `What is ${asked.join(', and ')}?`,
    }),
  ];
}
