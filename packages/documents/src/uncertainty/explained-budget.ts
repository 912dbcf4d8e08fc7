import {
  type BudgetLine,
  type Clause,
  clause,
  contributionTitle,
  type DesignedPoint,
  jcgm100,
  jcgm101,
  type Showing,
  showMeasure,
  showNumber,
  showTolerance,
  type TargetBudget,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { capital, type Explain, step, typedNumber } from '../derivation/explained.ts';

const evaluation: readonly Clause[] = [clause(jcgm100, '4.2 and 4.3')];
const combination: readonly Clause[] = [clause(jcgm100, '5.1.2 and 6.2')];
const byTrials: readonly Clause[] = [clause(jcgm101, '7.6 and 7.7')];

/** What one input brings into a reading: its width as stated, divided by what its distribution asks. */
export function explainedContribution(
  { contribution, uncertainty, share }: BudgetLine,
  shown: string,
  showing: Showing,
): Explain {
  return () => {
    const { stated, distribution, source, derived } = contribution;
    const title = showMeasure(contributionTitle(contribution), showing);
    const letter = stated.by === 'expanded' ? 'U' : 'a';
    const divisor = showNumber(stated.divisor, 5, showing.decimal);
    const width = percent(stated.value, showing);
    const brings = percent(uncertainty, showing);
    return {
      title: capital(title),
      sentence: `${capital(title)} lies off by up to ${width} (${stated.by.replaceAll('-', ' ')}, ${distribution}); as a standard uncertainty that is ${brings} of the reading, ${percent(share, showing)} of the whole variance.`,
      numbers: [
        { name: stated.by.replaceAll('-', ' '), shown: width },
        { name: 'divided by', shown: divisor },
        { name: 'standard uncertainty', shown: `${shown} % of the reading` },
        ...(source === undefined ? [] : [{ name: 'from', shown: source }]),
      ],
      steps: [
        ...(derived === undefined
          ? []
          : [{ formula: derived.formula, substituted: showMeasure(derived.substituted, showing) }]),
        step(
          `u = ${letter} / ${stated.by === 'expanded' ? 'k' : 'd'}`,
          `${width} / ${divisor}`,
          brings,
          `d is what a ${distribution} distribution asks, k the coverage factor it was stated with`,
        ),
      ],
      sources: evaluation,
    };
  };
}

/** All contributions together, and twice that. */
export function explainedExpanded(
  { target, budget }: TargetBudget,
  shown: string,
  showing: Showing,
): Explain | undefined {
  if (!budget.known) return undefined;
  const { lines, standardUncertainty, expandedUncertainty, coverage, upward, downward } = budget.value;
  return () => {
    const u = percent(standardUncertainty, showing, 5);
    const k = showNumber(coverage.factor, 4, showing.decimal);
    const terms = lines.map((line) => `(${percent(line.uncertainty, showing, 5)})²`);
    return {
      title: `Expanded uncertainty of ‘${target}’`,
      sentence: `The contributions are independent, so they add as squares; ${k} times their root is ${shown}.`,
      numbers: [
        { name: 'standard uncertainty', shown: percent(standardUncertainty, showing) },
        { name: 'coverage factor', shown: k },
        { name: 'expanded', shown },
        ...(upward === downward
          ? []
          : [{ name: 'up and down', shown: `${percent(upward, showing)} and ${percent(downward, showing)}` }]),
      ],
      steps: [
        step(
          'u = √(Σ u_i²)',
          `√(${terms.join(' + ')})`,
          u,
          ...lines.map(
            (line) =>
              `${percent(line.uncertainty, showing)} ${showMeasure(contributionTitle(line.contribution), showing)}`,
          ),
        ),
        step('U = k · u', `${k} · ${u}`, percent(expandedUncertainty, showing)),
      ],
      sources: combination,
    };
  };
}

/** The same found by drawing. */
export function explainedTrials(
  { target, trials, budget }: TargetBudget,
  shown: string,
  showing: Showing,
): Explain | undefined {
  if (!trials.known) return undefined;
  const { low, high, halfWidth, count, seed } = trials.value;
  return () => ({
    title: `‘${target}’ by trials`,
    sentence: `Each contribution was drawn ${count} times from its distribution; 95 of 100 sums lie in an interval half of which is ${shown.replace('±', '')}.`,
    numbers: [
      { name: 'lower end', shown: percent(low, showing, 5) },
      { name: 'upper end', shown: percent(high, showing, 5) },
      { name: 'draws', shown: String(count) },
      { name: 'seed', shown: `${seed}, which repeats them` },
      ...(budget.known ? [{ name: 'by the budget', shown: percent(budget.value.expandedUncertainty, showing) }] : []),
    ],
    steps: [
      step(
        'U = (x_high − x_low) / 2',
        `(${percent(high, showing, 6)} − ${signed(low, showing)}) / 2`,
        percent(halfWidth, showing),
      ),
    ],
    sources: byTrials,
  });
}

/** What was promised: the tolerance the target states. */
export function explainedPromise(
  { point, stated }: DesignedPoint,
  { target, tolerance }: TargetBudget,
  showing: Showing,
): Explain | undefined {
  if (!tolerance.known) return undefined;
  const entry = stated.statement.targets.find((each) => each.name === target)?.tolerance;
  const shown = showTolerance(tolerance.value, showing);
  if (entry?.known === true)
    return () =>
      typedNumber('tolerance', `target ${target} of ${point.of}`, entry, shown, 'how far a reading may lie off');
  const origin = point.targets.find((each) => each.name === target)?.origin;
  return () => ({
    title: 'Tolerance',
    sentence: `How far a reading of ‘${target}’ may lie off: ${origin?.from ?? 'as the point states it'}.`,
    numbers: [{ name: 'tolerance', shown }],
    steps: [] as readonly Derivation[],
    sources: origin?.sources ?? [],
  });
}

function percent(fraction: number, { decimal }: Showing, digits = 3): string {
  return `${showNumber(fraction * 100, digits, decimal)} %`;
}

function signed(fraction: number, showing: Showing): string {
  return fraction < 0 ? `(${percent(fraction, showing, 6)})` : percent(fraction, showing, 6);
}

/** The same under its own number. */
export function explainedBudget(each: TargetBudget, showing: Showing): Explain | undefined {
  if (!each.budget.known) return undefined;
  const { upward, downward } = each.budget.value;
  const [up, down] = [percent(upward, showing), percent(downward, showing)];
  return explainedExpanded(each, up === down ? `±${up}` : `+${up} \u2212${down}`, showing);
}
