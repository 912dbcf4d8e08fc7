import { expect, test } from 'vitest';
import { answer, unanswered } from '../../quantity/index.ts';
import { delayNotLong } from './delay-not-long.ts';
import { exampleCase, seconds } from './example.ts';
import type { AlarmCase } from './rule.ts';

const sound = (delay: number, slowest: AlarmCase['slowest'] | undefined): AlarmCase => {
  const { slowest: _, ...rest } = exampleCase({ delay: seconds(delay) });
  return slowest === undefined ? rest : { ...rest, slowest };
};
const asked = (delay: number, slowest: AlarmCase['slowest'] | undefined) =>
  delayNotLong.findings(sound(delay, slowest)).map(({ weight }) => weight);

test('law: ten turns, which the rule of the shortest delay asks for, are never asked about as too long', () => {
  for (const slowest of [0.001, 0.025, 0.2, 1, 25, 500]) {
    expect(asked(10 / slowest, answer(slowest)), String(slowest)).toEqual([]);
  }
});

test('fifteen minutes are asked about on a pump, at alert and trip, and not on a kiln that needs ten for ten turns', () => {
  expect(asked(900, answer(24.77))).toEqual(['question', 'question']);
  expect(asked(900, answer(1 / 60))).toEqual([]);
  expect(asked(1300, answer(1 / 60))).toEqual(['question', 'question']);
});

test('where the slowest speed is not known or the shaft may stand still, a minute holds', () => {
  for (const slowest of [undefined, answer(0), unanswered([{ of: 'shaft', what: 'slowest speed' }])]) {
    expect(asked(60, slowest)).toEqual([]);
    expect(asked(61, slowest)).toEqual(['question', 'question']);
  }
});
