import { type Finding, finding } from '../finding/index.ts';
import { showNumber } from '../quantity/index.ts';
import { clause, jcgm100, jcgm101 } from '../source/index.ts';
import type { BudgetModel } from './budget-file.ts';
import { type BudgetOutcome, validationDigits } from './budget-outcome.ts';
import type { Contribution } from './contribution.ts';
import { correlatedGroups } from './correlation.ts';

/** What is doubtful about a budget: where its answer rests on something unsaid, or the law of propagation fails. */
export function budgetDoubts(model: BudgetModel, outcome: BudgetOutcome): readonly Finding[] {
  const at = model.expression.measurand ?? model.title ?? 'budget';
  return [
    ...unstatedLevel(model, at),
    ...readingsAlike(model),
    ...fewReadingsDrawnAsNormal(model),
    ...correlatedWithFewReadings(model),
    ...disagreement(outcome, at, model.unit),
  ];
}

function unstatedLevel(model: BudgetModel, at: string): readonly Finding[] {
  if (model.levelStated) return [];
  return [
    finding({
      rule: 'uncertainty/level-not-stated',
      weight: 'notes',
      at,
      found: `no level of confidence stated; ${model.level} taken`,
      limit: '',
      because: 'An expanded uncertainty means nothing without its level of confidence.',
      remedy: [`write 'coverage: ${model.level}' in the budget`],
      sources: [clause(jcgm100, '7.2.3', 'from memory')],
    }),
  ];
}

function readingsAlike(model: BudgetModel): readonly Finding[] {
  return model.inputs
    .filter((each) => each.stated.by === 'readings' && each.standardUncertainty === 0)
    .map((each) =>
      finding({
        rule: 'uncertainty/readings-alike',
        weight: 'warns',
        at: each.name,
        found: `${Number(each.degreesOfFreedom) + 1} readings without any scatter`,
        limit: '',
        because: 'Readings that never change tell the resolution of the indication, not an uncertainty of zero.',
        remedy: ["state the input with its 'resolution'"],
        sources: [clause(jcgm100, 'F.2.2.1', 'from memory')],
      }),
    );
}

function fewReadingsDrawnAsNormal(model: BudgetModel): readonly Finding[] {
  return model.inputs
    .filter(
      (each) => each.degreesOfFreedom !== 'infinite' && each.distribution === 'normal' && !each.distributionStated,
    )
    .map((each) =>
      finding({
        rule: 'uncertainty/drawn-as-normal',
        weight: 'notes',
        at: each.name,
        found: `${showNumber(Number(each.degreesOfFreedom), 3)} degrees of freedom and no distribution; drawn as normal`,
        limit: '',
        because: "The trials then leave out that this uncertainty is itself only roughly known; Student's t keeps it.",
        remedy: [
          "write 'distribution: student-t' where the uncertainty comes from readings, or 'normal' if it is meant",
        ],
        sources: [clause(jcgm101, '6.4.9', 'from memory')],
      }),
    );
}

function correlatedWithFewReadings(model: BudgetModel): readonly Finding[] {
  const places = correlatedGroups(model.inputs, model.correlations);
  const groups = places.map((group) => group.map((place) => model.inputs[place]!));
  return groups
    .filter((group) => group.length > 1 && group.some((each) => each.degreesOfFreedom !== 'infinite'))
    .filter((group) => !model.correlations.every((each) => each.simultaneous || !tiesOf(group, each.between)))
    .map((group) =>
      finding({
        rule: 'uncertainty/correlated-degrees-of-freedom',
        weight: 'warns',
        at: group.map((each) => each.name).join(', '),
        found: 'correlated inputs with finite degrees of freedom; the fewest among them is taken for all',
        limit: '',
        because: 'The formula for effective degrees of freedom is for independent inputs; there is none for these.',
        remedy: ['give the readings themselves where they were taken at the same moments', 'give them as infinite'],
        sources: [clause(jcgm100, 'G.4.1')],
      }),
    );
}

function tiesOf(group: readonly Contribution[], between: readonly [Contribution, Contribution]): boolean {
  return group.includes(between[0]);
}

function disagreement(outcome: BudgetOutcome, at: string, unit: string | undefined): readonly Finding[] {
  if (!outcome.trials.known) {
    return [
      finding({
        rule: 'uncertainty/no-trials',
        weight: 'warns',
        at,
        found: `no result by trials: missing ${outcome.trials.missing.map((each) => `${each.what} of ${each.of}`).join('; ')}`,
        limit: '',
        because: 'The law of propagation stands here without the check by trials.',
        remedy: ['state what is missing'],
        sources: [clause(jcgm101, '8', 'from memory')],
      }),
    ];
  }
  const checked = outcome.validation.known ? outcome.validation.value : undefined;
  if (checked === undefined || checked.within) return [];
  const differs = checked.verdict === 'differs';
  const show = (value: number) => `${showNumber(value, 3)}${unit === undefined ? '' : ` ${unit}`}`;
  const ends = `${show(checked.low)} at the lower end, ${show(checked.high)} at the upper`;
  return [
    finding({
      rule: differs ? 'uncertainty/propagation-differs-from-trials' : 'uncertainty/too-few-trials-to-compare',
      weight: differs ? 'warns' : 'notes',
      at,
      found: `interval by the law of propagation lies apart from the symmetric interval by trials: ${ends}`,
      limit: `${show(checked.tolerance)} (${validationDigits} significant digits of the standard uncertainty)`,
      because: differs
        ? 'The model is not straight over the width of its inputs, or one of them is far from normal; use the trials.'
        : 'The scatter of the trials themselves is as large as what they should decide.',
      remedy: differs ? ["report the trials' standard deviation and interval"] : ["write more 'trials' in the budget"],
      sources: [clause(jcgm101, '8', 'from memory')],
    }),
  ];
}
