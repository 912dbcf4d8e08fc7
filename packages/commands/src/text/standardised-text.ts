import {
  type Answer,
  marginalBelow,
  marginalWithout,
  type PlantKeeping,
  type PriceOfType,
  type Sheet,
  type StandardisedPlant,
  type SubstitutesOfPoint,
  showDecibels,
  showMoney,
  showNumber,
  showPercent,
  type storeSheet,
  valueIfStated,
} from '@soundpost/core';
import { blank, bullet, grave, heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { counted } from './values-text.ts';

/** All that was found of a plant's part numbers. */
export interface StandardisedFacts {
  readonly title: Sheet<typeof storeSheet>;
  readonly keeping: PlantKeeping;
  readonly plan: StandardisedPlant;
  readonly prices: readonly PriceOfType[];
  readonly substitutes: readonly SubstitutesOfPoint[];
  /** What the plant as designed costs by the same prices, where all of its parts are priced and meet. */
  readonly costNow: number | undefined;
}

export function standardisedLines(facts: StandardisedFacts, manner: Manner, all: boolean): readonly Line[] {
  const { keeping, plan } = facts;
  const money = moneyIn(facts, manner);
  const points = plan.chosen.length + plan.unmet.length;
  return [
    ...heading(`Part numbers for ${counted(points, 'point')}, by the prices of ${titleOf(facts)}`, manner.width),
    ...plainLines(
      table(
        [
          { head: 'Kept' },
          { head: 'In use', align: 'right' },
          { head: 'Spares', align: 'right' },
          { head: 'In stock', align: 'right' },
          { head: 'To buy', align: 'right' },
          { head: 'Cost', align: 'right' },
        ],
        plan.kept.map((each) => [
          each.type.rule === 'pinned' ? `${each.type.name} (pinned)` : each.type.name,
          String(each.inUse),
          keeping.sparesUnknown.has(each.place) ? 'unknown' : String(each.spares),
          String(each.type.inStock),
          atLeast(String(each.toBuy), keeping.sparesUnknown.has(each.place)),
          atLeast(money(each.cost), keeping.sparesUnknown.has(each.place)),
        ]),
        manner.width,
        '  ',
      ),
    ),
    ...paragraph(
      'Spares: the fewest with which the store is not empty within a lead time at the service level asked for, failures ' +
        'taken as independent. The cost of a part number is its keeping and its pieces to buy; fitting is in the total.',
      manner.width,
    ),
    blank,
    ...paragraph(proofText(facts, money), manner.width),
    ...(facts.costNow === undefined
      ? []
      : paragraph(
          `As designed now the same plant costs ${money(facts.costNow)} by the same prices${sameMoney(facts.costNow, plan.cost, money) ? '' : `: ${money(facts.costNow - plan.cost)} more`}.`,
          manner.width,
        )),
    ...unmetLines(plan, manner),
    blank,
    ...heading('What each kept part number is worth', manner.width),
    ...facts.prices.flatMap((price) => bullet(priceText(price, facts, money), manner.width)),
    ...gapLines(keeping, manner),
    ...(all ? substituteLines(facts, manner) : []),
  ];
}

const titleOf = ({ title }: StandardisedFacts) => valueIfStated(title.values.title) ?? 'a store without a name';

function moneyIn({ keeping: { currency } }: StandardisedFacts, { showing }: Manner) {
  return (amount: number) => showMoney({ amount, currency }, showing.decimal);
}

/** A number from which something unknown is left out. */
function atLeast(text: string, leavesOut: boolean): string {
  return leavesOut ? `≥ ${text}` : text;
}

function proofText({ plan, keeping }: StandardisedFacts, money: (amount: number) => string): string {
  const open = keeping.missing.length > 0 ? ' without what is not known, listed below,' : '';
  const total = `In all ${money(plan.cost)}${open} with ${counted(plan.kept.length, 'part number')}.`;
  if (plan.proof.by === 'shares') {
    return `${total} No choice costs less: the fixed costs shared out among the points that could cause them add up to it.`;
  }
  if (plan.proof.by === 'solver')
    return `${total} No choice costs less, as ${plan.proof.name} proved within its tolerance.`;
  return (
    `${total} Not proven to be the least: no choice costs less than ${money(plan.bound)}, so at most ` +
    `${showPercent(plan.gap, 2)} could be saved. --seconds gives the solver longer.`
  );
}

function unmetLines({ unmet }: StandardisedPlant, { width }: Manner): readonly Line[] {
  if (unmet.length === 0) return [];
  return [
    blank,
    ...grave(
      `${counted(unmet.length, 'point')} met by no allowed and priced candidate: ${unmet.join(', ')}. Nothing is chosen there.`,
      width,
    ),
  ];
}

function priceText(price: PriceOfType, facts: StandardisedFacts, money: (amount: number) => string): string {
  const { kept, irreplaceableAt, more } = price;
  const name = `${kept.type.name}, at ${counted(kept.at.length, 'point')}`;
  if (more === undefined) {
    return `${name}: cannot be left out; nothing else meets ${listed(irreplaceableAt)}.`;
  }
  const marginal = marginalWithout(facts.substitutes, kept.place);
  const worth = sameMoney(more.atLeast, more.atMost, money)
    ? `without it the plant costs ${money(more.atMost)} more`
    : `without it the plant costs between ${money(more.atLeast)} and ${money(more.atMost)} more`;
  const margins =
    marginal.length === 0
      ? ''
      : `; with the part numbers that stay, ${listed(marginal)} would have less than ${showDecibels(marginalBelow)} in hand`;
  return `${name}: ${worth}${margins}.`;
}

function sameMoney(a: number, b: number, money: (amount: number) => string): boolean {
  return money(a) === money(b);
}

/** Some names, and how many more there are: a list of a hundred points is not read. */
function listed(names: readonly string[]): string {
  const shown = names.slice(0, 4).join(', ');
  return names.length > 4 ? `${shown} and ${names.length - 4} more` : shown;
}

function gapLines({ unpriced, missing, aside, needs }: PlantKeeping, { width }: Manner): readonly Line[] {
  const untold = needs.reduce((sum, each) => sum + each.untold, 0);
  const gaps = [
    ...(unpriced.length === 0
      ? []
      : [
          `No price in the store for ${unpriced.join(', ')}, which would meet a point: not chosen, and a price may change the choice.`,
        ]),
    ...missing.map(({ of, what }) => `${of}: ${what} is not known.`),
    ...(aside.length === 0
      ? []
      : [`Without a stated way to an input, or without a target, left aside: ${listed(aside)}.`]),
    ...(untold === 0
      ? []
      : [
          `Of ${counted(untold, 'candidate')} it cannot be told whether they meet: not chosen; \`soundpost shortlist\` says what is missing.`,
        ]),
  ];
  if (gaps.length === 0) return [];
  return [blank, ...heading('What this choice does not know', width), ...gaps.flatMap((gap) => bullet(gap, width))];
}

function substituteLines({ substitutes }: StandardisedFacts, manner: Manner): readonly Line[] {
  return [
    blank,
    ...heading('What could stand in, of the part numbers kept', manner.width),
    ...substitutes.flatMap(({ point, chosen, substitutes: others }) => [
      ...paragraph(`${point}: ${chosen.way.name}, least margin ${showDecibels(chosen.row.leastMargin)}`, manner.width),
      ...(others.length === 0
        ? bullet('nothing else that is kept', manner.width)
        : others.flatMap(({ way, changes }) =>
            bullet(
              `${way.way.name}, least margin ${showDecibels(way.row.leastMargin)}: ${changes
                .map(
                  (each) =>
                    `${each.what} ${valueText(each.from)} → ${valueText(each.to)}; then ${each.redo.join(', ')}`,
                )
                .join('. ')}`,
              manner.width,
            ),
          )),
    ]),
  ];
}

function valueText(value: Answer<number> | string): string {
  if (typeof value === 'string') return value;
  return value.known ? showNumber(value.value) : 'unknown';
}
