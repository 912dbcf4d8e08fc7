import { answer, fraction } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import type { ElementLine } from './element.ts';
import { counted, turning } from './form.ts';

const sources = [clause(tradePractice, 'orders of a shaft')];

/** Orders of once-per-turn that are worth a look on any machine. */
export const usualShaftOrders = 10;

/** The lines of a shaft, whatever stands on it. */
export function shaftLines(shaft: string): readonly ElementLine[] {
  return [
    {
      name: '1x',
      meaning: 'Once per turn: unbalance, bow, and with its orders misalignment and looseness',
      form: answer([counted(1, turning(shaft))]),
      harmonics: usualShaftOrders,
      sources,
    },
    {
      name: '2x',
      meaning: 'Twice per turn: misalignment, a shaft stiffer in one direction than in the other',
      form: answer([counted(2, turning(shaft))]),
      sources,
    },
    {
      name: 'half-order',
      meaning: 'Once in two turns, and its odd orders: looseness, rub',
      form: answer([counted(fraction(1, 2), turning(shaft))]),
      harmonics: 5,
      sources,
    },
  ];
}
