import { type Answer, fromAll } from '../quantity/index.ts';
import { type Budget, budget } from './budget.ts';
import type { BudgetModel } from './budget-file.ts';
import { modelOf, propagated } from './propagation.ts';
import { type PropagationValidation, propagationValidation } from './propagation-validation.ts';
import { trials } from './trials.ts';
import type { Trials } from './trials-summary.ts';

/** The answer to a budget file, by the law of propagation and by trials, and whether the two agree. */
export interface BudgetOutcome {
  readonly budget: Budget;
  readonly trials: Answer<Omit<Trials, 'results'>>;
  readonly validation: Answer<PropagationValidation>;
}

/** Significant digits of the standard uncertainty to which both ways must agree. */
export const validationDigits = 2;

/** Outcomes by model: the trials of one model are drawn once, since the same model and seed give the same outcome. */
const drawn = new WeakMap<BudgetModel, BudgetOutcome>();

/** What a budget comes to: by the law of propagation, and by trials where it asks for them; the same each time. */
export function budgetOutcome(model: BudgetModel): BudgetOutcome {
  const known = drawn.get(model);
  if (known !== undefined) return known;
  const outcome = computed(model);
  drawn.set(model, outcome);
  return outcome;
}

function computed(model: BudgetModel): BudgetOutcome {
  const { expression, inputs, correlations, level } = model;
  const byLaw = budget(propagated(expression, inputs), { coverage: { level }, correlations });
  const names = inputs.map((each) => each.name);
  const byTrials = trials({
    model: modelOf(expression, names),
    inputs,
    correlations,
    level,
    count: model.trials,
    seed: model.seed,
  });
  return {
    budget: byLaw,
    trials: fromAll({ all: byTrials }, ({ all: { results: _, ...summary } }) => summary),
    validation: fromAll({ all: byTrials }, ({ all }) =>
      propagationValidation(byLaw, all, { digits: validationDigits, interval: 'symmetric' }),
    ),
  };
}
