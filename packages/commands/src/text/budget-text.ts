import {
  contributionTitle,
  type Showing,
  showMeasure,
  showNumber,
  showTolerance,
  type TargetBudget,
} from '@soundpost/core';
import { blank, type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { cellText, distinctMissing, missingText } from './values-text.ts';

/** How truly each target is read: with the certificate of this piece, and with the nominal sensitivity. */
export function budgetLines(budgets: readonly TargetBudget[], { showing, width }: Manner): readonly Line[] {
  if (budgets.length === 0) return [];
  const targets = [...new Set(budgets.map((each) => each.target))];
  const of = (target: string, entered: TargetBudget['entered']) =>
    budgets.find((each) => each.target === target && each.entered === entered);
  const columns: Column[] = [
    { head: 'accuracy, k = 2' },
    { head: 'promised' },
    { head: 'with the certificate of this piece' },
    { head: 'with the nominal sensitivity' },
  ];
  const rows = targets.map((target) => {
    const [individual, nominal] = [of(target, 'individual'), of(target, 'nominal')];
    const any = individual ?? nominal;
    return [
      target,
      any === undefined ? '?' : cellText(any.tolerance, (tolerance) => showTolerance(tolerance, showing)),
      budgetText(individual, showing),
      budgetText(nominal, showing),
    ];
  });
  const first = budgets.find((each) => each.entered === 'individual' && each.budget.known);
  return [
    blank,
    ...plainLines(table(columns, rows, width, '  ')),
    ...(first === undefined ? [] : contributionLines(first, showing, width)),
    ...missingBudgets(budgets, width),
  ];
}

function budgetText(each: TargetBudget | undefined, showing: Showing): string {
  if (each === undefined || !each.budget.known) return '? unknown';
  const { upward, downward } = each.budget.value;
  const width = showTolerance({ low: -downward, high: upward }, showing);
  const words = each.promise.known ? (each.promise.value === 'kept' ? '✓ kept' : '✗ not proven') : '?';
  return `${width} ${words}`;
}

function contributionLines(each: TargetBudget, showing: Showing, width: number): readonly Line[] {
  if (!each.budget.known) return [];
  const largest = each.budget.value.lines
    .slice(0, 3)
    .map((line) => `${showMeasure(contributionTitle(line.contribution), showing)} ${percent(line.share, showing)}`)
    .join(', ');
  const trials = each.trials.known
    ? ` By ${each.trials.value.count} trials (seed ${each.trials.value.seed}) half the 95 % interval is ${percent(each.trials.value.halfWidth, showing, 3)}.`
    : '';
  return paragraph(
    `  - ${each.target}, with the certificate: most of the variance from ${largest}.${trials}`,
    width,
    '  ',
  );
}

function percent(share: number, { decimal }: Showing, digits = 2): string {
  return `${showNumber(share * 100, digits, decimal)} %`;
}

function missingBudgets(budgets: readonly TargetBudget[], width: number): readonly Line[] {
  const missing = distinctMissing(budgets.flatMap((each) => (each.budget.known ? [] : each.budget.missing)));
  return missing.length === 0 ? [] : paragraph(`  ? ${missingText(missing)}`, width, '  ');
}
