import { fullScale, liveZero } from '../../chain/formulas/loop-state.ts';
import type { DesignedPoint } from '../../design/design.ts';
import { measured } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { chainOf, sensitivityAtInput } from '../expected.ts';
import type { ReadingTable } from '../reading/kinds.ts';
import { axisFor, type Picture } from './picture.ts';

interface Step {
  readonly x: number;
  readonly y: number;
}

/** A table that was read off, as points, beside the line that the design expects. */
export function readingPictures(table: ReadingTable, designed: DesignedPoint): readonly Picture[] {
  return table.kind === 'loop-steps' ? loop(table, designed) : curve(table, designed);
}

function loop(table: Extract<ReadingTable, { kind: 'loop-steps' }>, designed: DesignedPoint): readonly Picture[] {
  const card = chainOf(designed)?.input.loopCard;
  const steps = table.rows.flatMap(({ values }): readonly Step[] => {
    const current = valueIfStated(values.current) as number | undefined;
    const counts = valueIfStated(values.counts) as number | undefined;
    return current === undefined || counts === undefined ? [] : [{ x: 1000 * current, y: counts }];
  });
  if (steps.length < 2 || card === undefined) return [];
  const { currentAtLow, currentAtHigh, countsAtLow, countsAtHigh } = card;
  if (!currentAtLow.known || !currentAtHigh.known || !countsAtLow.known || !countsAtHigh.known) return [];
  const [low, high] = [1000 * currentAtLow.value, 1000 * currentAtHigh.value];
  const slope = (countsAtHigh.value - countsAtLow.value) / (high - low);
  const expected = (current: number) => countsAtLow.value + slope * (current - low);
  const ends = [1000 * liveZero, 1000 * fullScale];
  return [
    {
      of: table.name,
      at: table.point,
      title: 'Counts over the current that was fed',
      x: axisFor('current', 'mA', 'linear', [...ends, ...steps.map(({ x }) => x)]),
      y: axisFor('counts', 'counts', 'linear', [...ends.map(expected), ...steps.map(({ y }) => y)]),
      curves: [
        { name: 'expected', is: 'expected', points: ends.map((each) => [each, expected(each)] as const) },
        { name: 'read off', is: 'found', points: steps.map(({ x, y }) => [x, y] as const), apart: true },
      ],
      bands: [],
      marks: [],
      rows: steps.map(({ x, y }) => ({
        what: `at ${Number(x.toPrecision(4))} mA`,
        expected: `${Math.round(expected(x))} counts`,
        found: `${y} counts`,
      })),
    },
  ];
}

function curve(table: Extract<ReadingTable, { kind: 'probe-curve' }>, designed: DesignedPoint): readonly Picture[] {
  const steps = table.rows.flatMap(({ values }): readonly Step[] => {
    const gap = valueIfStated(values.gap) as number | undefined;
    const voltage = valueIfStated(values.voltage) as number | undefined;
    return gap === undefined || voltage === undefined ? [] : [{ x: 1000 * gap, y: voltage }];
  });
  const sensitivity = sensitivityAtInput(designed);
  if (steps.length < 2 || !sensitivity.known) return [];
  // Only the slope is designed: the line goes through the middle of what was read off.
  const mean = (of: 'x' | 'y') => steps.reduce((sum, each) => sum + each[of], 0) / steps.length;
  const slope = (Math.sign(steps.at(-1)!.y - steps[0]!.y) * Math.abs(sensitivity.value)) / 1000;
  const [middle, height] = [mean('x'), mean('y')];
  const expected = (gap: number) => height + slope * (gap - middle);
  const ends = [steps[0]!.x, steps.at(-1)!.x];
  return [
    {
      of: table.name,
      at: table.point,
      title: 'Voltage over the gap that was set',
      x: axisFor(
        'gap',
        'mm',
        'linear',
        steps.map(({ x }) => x),
      ),
      y: axisFor('voltage', 'V', 'linear', [...ends.map(expected), ...steps.map(({ y }) => y)]),
      curves: [
        { name: 'designed slope', is: 'expected', points: ends.map((each) => [each, expected(each)] as const) },
        { name: 'read off', is: 'found', points: steps.map(({ x, y }) => [x, y] as const), apart: true },
      ],
      bands: [],
      marks: [],
      rows: steps.map(({ x, y }) => ({
        what: `at ${Number(x.toPrecision(4))} mm`,
        expected: measured('voltage', expected(x), 4),
        found: measured('voltage', y, 4),
      })),
    },
  ];
}
