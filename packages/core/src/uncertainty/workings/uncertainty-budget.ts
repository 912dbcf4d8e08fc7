import { fileField, numberField } from '../../quantity/index.ts';
import { clause, jcgm100, jcgm101 } from '../../source/index.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { type BudgetModel, readBudget } from '../budget-file.ts';
import { budgetOutcome } from '../budget-outcome.ts';
import { budgetDoubts } from '../doubts.ts';
import { degreesOfFreedomField, type Reported, reportedField } from '../reported.ts';

const uncertainty = (meaning: string, symbol: string) => reportedField(meaning, { symbol, digits: 3 });
const estimate = (meaning: string, symbol: string) => reportedField(meaning, { symbol, digits: 2 });

/** The uncertainty of a model from what is known of its inputs, by the law of propagation and by trials. */
export const uncertaintyBudget = working({
  name: 'uncertainty-budget',
  title: 'Uncertainty budget',
  inputs: {
    file: fileField('Budget: model, inputs, correlations, level of confidence', readBudget, showBudget),
  },
  outputs: {
    estimate: output(estimate('Estimate of the result', 'y'), 'y = f(x_1, …, x_N)'),
    standardUncertainty: output(
      uncertainty('Combined standard uncertainty', 'u_c'),
      'u_c = √(Σ_i Σ_j c_i · c_j · u_i · u_j · r_ij), c_i = ∂f/∂x_i',
    ),
    degreesOfFreedom: output(
      degreesOfFreedomField('Effective degrees of freedom', { symbol: 'ν_eff' }),
      'ν_eff = (u_c)⁴ / Σ_i ((c_i · u_i)⁴ / ν_i)',
    ),
    coverageFactor: output(
      numberField("Coverage factor: Student's t at the next lower whole degrees of freedom", { symbol: 'k' }),
      'k = t_p(⌊ν_eff⌋)',
    ),
    expandedUncertainty: output(uncertainty('Expanded uncertainty', 'U'), 'U = k · u_c'),
    intervalLow: output(estimate('Lower end of the coverage interval', 'y_low'), 'y_low = y − U'),
    intervalHigh: output(estimate('Upper end of the coverage interval', 'y_high'), 'y_high = y + U'),
    trialsMean: optionalOutput(estimate('Mean of the trials', 'm'), 'm = (1/M) · Σ_r f(x_r)'),
    trialsStandardUncertainty: optionalOutput(
      uncertainty('Standard deviation of the trials', 's'),
      's = √(Σ_r (f(x_r) − m)² / (M − 1))',
    ),
    trialsIntervalLow: optionalOutput(
      estimate('Lower end of the shortest interval by trials', 's_low'),
      's_low = y_(r), the r with the least y_(r+pM) − y_(r)',
    ),
    trialsIntervalHigh: optionalOutput(
      estimate('Upper end of the shortest interval by trials', 's_high'),
      's_high = y_(r+pM)',
    ),
  },
  holds:
    'Law of propagation: the model is nearly straight over the width of its inputs, and the result nearly normal. ' +
    'The trials need neither, and where both differ a finding says so. Degrees of freedom: independent inputs, or ' +
    'readings taken at the same moments. Values are plain numbers in the units of the file; nothing is converted.',
  sources: [clause(jcgm100, '5.1.2, 5.2.2, G.4.1, G.6.4'), clause(jcgm101, '7 and 8', 'from memory')],
  evaluate: ({ file }) => {
    const { budget, trials } = budgetOutcome(file);
    const u = budget.standardUncertainty;
    const reported = (value: number, own: number): Reported => ({
      value,
      uncertainty: own,
      ...(file.unit === undefined ? {} : { unit: file.unit }),
    });
    const drawn = trials.known ? trials.value : undefined;
    const s = drawn?.standardDeviation ?? 0;
    const ifDrawn = (value: number | undefined) => (value === undefined ? undefined : reported(value, s));
    return {
      estimate: reported(budget.estimate, u),
      standardUncertainty: reported(u, u),
      degreesOfFreedom: budget.degreesOfFreedom,
      coverageFactor: budget.coverage.factor,
      expandedUncertainty: reported(budget.expandedUncertainty, u),
      intervalLow: reported(budget.interval.low, u),
      intervalHigh: reported(budget.interval.high, u),
      trialsMean: ifDrawn(drawn?.mean),
      trialsStandardUncertainty: ifDrawn(drawn?.standardDeviation),
      trialsIntervalLow: ifDrawn(drawn?.shortest.low),
      trialsIntervalHigh: ifDrawn(drawn?.shortest.high),
    };
  },
  doubts: ({ file }) => budgetDoubts(file, budgetOutcome(file)),
  example: { file: 'examples/uncertainty/end-gauge.yaml' },
});

function showBudget(model: BudgetModel): string {
  const inputs = `${model.inputs.length} ${model.inputs.length === 1 ? 'input' : 'inputs'}`;
  const level = `level of confidence ${model.level}${model.levelStated ? '' : ' (not stated)'}`;
  return `${model.expression.text}; ${inputs}, ${level}, ${model.trials} trials from seed ${model.seed}`;
}
