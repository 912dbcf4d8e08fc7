import {
  type Answer,
  type Budget,
  type BudgetLine,
  contributionTitle,
  type DesignedPoint,
  type Missing,
  type PointBudgets,
  type SensitivityEntered,
  type Showing,
  showMeasure,
  showNumber,
  showTolerance,
  type TargetBudget,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { figure } from '../drawing/figure.ts';
import { answered } from '../typesetting/answers.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';
import { budgetPlot } from './budget-plot.ts';
import { explainedContribution, explainedExpanded, explainedPromise, explainedTrials } from './explained-budget.ts';

const enteredWords: Readonly<Record<SensitivityEntered, string>> = {
  individual: 'sensitivity from the certificate of this piece',
  nominal: 'nominal sensitivity of the data sheet',
};

/** How truly each target is read, with both ways of entering the sensitivity, and whether that keeps its promise. */
export function budgetSection(designed: DesignedPoint, id: string, setting: Setting): Html {
  const { budgets, point } = designed;
  if (budgets.length === 0) return html`<p>No budget: no target here has an amplitude that this chain can read.</p>`;
  const numberOf = (target: string) => point.targets.findIndex((each) => each.name === target) + 1;
  const known = budgets.filter((each) => each.budget.known);
  const missing = missingOf(budgets);
  const results = known.length === 0 ? undefined : resultTable(designed, known, numberOf, setting);
  const ways = (['individual', 'nominal'] as const).flatMap((entered) => {
    const of = known.filter((each) => each.entered === entered);
    return of.length === 0 ? [] : [contributionTable(of, entered, numberOf, setting)];
  });
  const open =
    missing.length === 0
      ? undefined
      : html`<p>${sign('unknown')}: ${known.length === 0 ? 'no' : 'not every'} budget can be drawn up, for want of ${joined(missing.map(({ of, what }) => html`${what} of ${named(of)}`))}. Until that is known the promise of the tolerance is not proven.</p>`;
  const plot =
    known.length === 0
      ? undefined
      : figure(`${id}-budget`, (width) => budgetPlot(designed, setting.showing, width)!, plotCaption);
  return html`${open}${plot}${results}${ways}
${known.length === 0 ? undefined : html`<p class="note">Relative terms of a product, independent of each other, added as squares; half-widths are rectangular; k\u00a0=\u00a02. The trials draw each term from its distribution and give half the shortest 95 % interval. Holds well above the noise, which would only add upward.</p>`}`;
}

const plotCaption =
  'How far each reading may lie off (bar, k = 2) between the limits promised (upright strokes): full where the promise is kept, an outlined bar where it is not proven. First with the sensitivity of the certificate of the piece, then with that of the data sheet.';

function resultTable(
  designed: DesignedPoint,
  known: PointBudgets,
  numberOf: (target: string) => number,
  setting: Setting,
): Html {
  const { showing } = setting;
  return table({
    caption: 'Expanded uncertainty of a reading against the tolerance promised',
    columns: [
      { head: 'Target', cell: (each: TargetBudget) => html`${numberOf(each.target)} ${named(each.target)}` },
      { head: 'With', cell: (each) => enteredWords[each.entered] },
      {
        head: 'U, k = 2',
        kind: 'measure',
        cell: (each) => answered(each.budget, (budget) => expanded(budget, showing)),
        opened: (each, set) =>
          each.budget.known
            ? opened(set, explainedExpanded(each, expanded(each.budget.value, showing), showing), setting)
            : set,
      },
      {
        head: 'By trials',
        kind: 'measure',
        cell: (each) => answered(each.trials, ({ halfWidth }) => `±${percent(halfWidth, showing)}`),
        opened: (each, set) =>
          each.trials.known
            ? opened(set, explainedTrials(each, `±${percent(each.trials.value.halfWidth, showing)}`, showing), setting)
            : set,
      },
      {
        head: 'Promised',
        kind: 'line',
        cell: (each) => answered(each.tolerance, (tolerance) => showTolerance(tolerance, showing)),
        opened: (each, set) => opened(set, explainedPromise(designed, each, showing), setting),
      },
      { head: 'Promise', kind: 'line', cell: (each) => answered(each.promise, (promise) => sign(promise)) },
    ],
    rows: known,
    folds: true,
  });
}

function expanded({ upward, downward }: Budget, showing: Showing): string {
  const [up, down] = [percent(upward, showing), percent(downward, showing)];
  return up === down ? `±${up}` : `+${up} \u2212${down}`;
}

function percent(fraction: number, { decimal }: Showing): string {
  return `${showNumber(fraction * 100, 3, decimal)} %`;
}

interface Line {
  readonly name: string;
  readonly source: string;
  readonly stated: string;
  readonly of: ReadonlyMap<string, BudgetLine>;
}

/** Standard uncertainty of each contribution for each target, largest first. */
function contributionTable(
  known: PointBudgets,
  entered: SensitivityEntered,
  numberOf: (target: string) => number,
  setting: Setting,
): Html {
  const { showing } = setting;
  const lines = new Map<string, Line>();
  for (const { target, budget } of known) {
    if (!budget.known) continue;
    for (const line of budget.value.lines) {
      const { contribution } = line;
      const { name, source, stated, distribution } = contribution;
      const before = lines.get(name);
      const divisor = `${distribution}, ${stated.by.replaceAll('-', ' ')} ÷ ${showNumber(stated.divisor, 4, showing.decimal)}`;
      lines.set(name, {
        name: showMeasure(contributionTitle(contribution), showing),
        source: before?.source ?? source ?? '',
        stated: divisor,
        of: new Map([...(before?.of ?? []), [target, line]]),
      });
    }
  }
  const largest = (line: Line) => Math.max(...[...line.of.values()].map((each) => each.uncertainty));
  const columns: readonly Column<Line>[] = known.map(({ target }) => ({
    head: `${numberOf(target)}`,
    kind: 'number',
    cell: (line) => {
      const value = line.of.get(target);
      return value === undefined ? '—' : hundredths(value, showing);
    },
    opened: (line, set) => {
      const value = line.of.get(target);
      return value === undefined
        ? set
        : opened(set, explainedContribution(value, hundredths(value, showing), showing), setting);
    },
  }));
  return table({
    caption: `Contributions with the ${enteredWords[entered]}: standard uncertainty in % of the reading, by target number`,
    columns: [
      { head: 'Contribution', cell: (line: Line) => line.name },
      { head: 'Distribution', cell: (line) => line.stated },
      { head: 'From', cell: (line): Piece => named(line.source) },
      ...columns,
    ],
    rows: [...lines.values()].sort((a, b) => largest(b) - largest(a)),
  });
}

function hundredths({ uncertainty }: BudgetLine, { decimal }: Showing): string {
  return showNumber(uncertainty * 100, 3, decimal);
}

export function missingOf(budgets: PointBudgets): readonly Missing[] {
  const all = budgets.flatMap(({ budget, trials, tolerance }) =>
    ([budget, trials, tolerance] as readonly Answer<unknown>[]).flatMap((each) => (each.known ? [] : each.missing)),
  );
  return [...new Map(all.map((each) => [`${each.of}/${each.what}`, each])).values()];
}
