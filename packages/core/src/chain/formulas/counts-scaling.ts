import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { countField, numberField, quantityField, Refusal, si } from '../../quantity/index.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';

/** How an input card reads a current: two points of a straight line, currents in amperes. */
export interface InputCard {
  readonly currentAtLow: number;
  readonly currentAtHigh: number;
  readonly countsAtLow: number;
  readonly countsAtHigh: number;
}

/** Counts of a current before rounding: N = N₀ + (N₁ − N₀)·(I − I₀)/(I₁ − I₀). */
export function exactCounts(current: number, card: InputCard): number {
  distinct(card);
  const { currentAtLow: I0, currentAtHigh: I1, countsAtLow: N0, countsAtHigh: N1 } = card;
  return N0 + ((N1 - N0) * (current - I0)) / (I1 - I0);
}

/** Whole counts that the card shows for a current in amperes: the straight line, rounded. */
export function cardCounts(current: number, card: InputCard): number {
  return Math.round(exactCounts(current, card));
}

/** Current that stands behind counts, in amperes: the same line backwards. */
export function cardCurrent(counts: number, card: InputCard): number {
  distinct(card);
  const { currentAtLow: I0, currentAtHigh: I1, countsAtLow: N0, countsAtHigh: N1 } = card;
  return I0 + ((I1 - I0) * (counts - N0)) / (N1 - N0);
}

function distinct(card: InputCard): void {
  if (card.currentAtHigh > card.currentAtLow && card.countsAtHigh > card.countsAtLow) return;
  throw new Refusal({
    read: `${card.currentAtLow}..${card.currentAtHigh} A as ${card.countsAtLow}..${card.countsAtHigh} counts`,
    expected: 'a card whose upper current and upper counts are above the lower ones',
  });
}

export const countsScaling = working({
  name: 'counts-scaling',
  title: 'Counts of a current-input card',
  inputs: {
    current: quantityField('current', 'Current in the loop', { symbol: 'I', example: '9.44 mA' }),
    countsAtLow: countField('Counts at the low current of the card', { least: 0, symbol: 'N_0', example: '0' }),
    countsAtHigh: countField('Counts at the high current of the card', { symbol: 'N_1', example: '32000' }),
    currentLow: quantityField('current', 'Low current of the card', { symbol: 'I_0', example: '4 mA' }),
    currentHigh: quantityField('current', 'High current of the card', { symbol: 'I_1', example: '20 mA' }),
  },
  outputs: {
    counts: output(
      numberField('Whole counts; negative below the low point of a card that reads so', { symbol: 'N' }),
      'N = N_0 + (N_1 − N_0) · (I − I_0)/(I_1 − I_0), to the nearest whole',
    ),
    perCount: output(
      quantityField('current', 'Current of one count', { symbol: 'I_N' }),
      'I_N = (I_1 − I_0)/(N_1 − N_0)',
    ),
  },
  holds: 'a linear card; what it shows outside its two points is its own affair, some hold and some go on',
  sources: [clause(loopPractice, 'scaling')],
  evaluate: ({ current, countsAtLow, countsAtHigh, currentLow, currentHigh }) => {
    const card = { countsAtLow, countsAtHigh, currentAtLow: currentLow, currentAtHigh: currentHigh };
    return {
      counts: si('ratio', cardCounts(current, card)),
      perCount: si('current', cardCurrent(countsAtLow + 1, card) - currentLow),
    };
  },
  doubts: ({ current, currentLow, currentHigh }) => beyond(current, currentLow, currentHigh),
  example: {
    current: '9.44 mA',
    'counts-at-low': '0',
    'counts-at-high': '32000',
    'current-low': '4 mA',
    'current-high': '20 mA',
  },
});

function beyond(current: number, low: number, high: number): readonly Finding[] {
  // A nanoampere of slack: the limits are written in milliamperes and read into amperes.
  if (current >= low - 1e-9 && current <= high + 1e-9) return [];
  return [
    finding({
      rule: 'loop/outside-card',
      weight: 'notes',
      at: 'counts-scaling/current',
      found: measured('current', current),
      limit: said`${measured('current', low)} to ${measured('current', high)}`,
      because: 'Outside its two points a card may go on along the line, hold its last count or set a fault bit.',
      remedy: ['look up what the card shows there'],
      sources: [clause(loopPractice)],
    }),
  ];
}
