import { type DesignedPoint, type Showing, showNumber } from '@soundpost/core';
import { type Drawing, label, line, type Mark, rectangle, type Width } from '../drawing/drawing.ts';
import { fitted } from '../drawing/text-extent.ts';

interface Row {
  readonly name: string;
  readonly upward: number;
  readonly downward: number;
  readonly promised: { readonly low: number; readonly high: number } | undefined;
  readonly kept: boolean;
}

const layouts = { wide: { width: 760, names: 300, size: 12 }, narrow: { width: 358, names: 96, size: 10 } } as const;

/** How far each reading may lie off against how far it may: a bar to either side of the truth between two limits. */
export function budgetPlot({ budgets, point }: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  const rows = budgets.flatMap(({ target, entered, budget, tolerance, promise }): readonly Row[] => {
    if (!budget.known) return [];
    const number = point.targets.findIndex((each) => each.name === target) + 1;
    return [
      {
        // On a telephone there is no room for both, and the number names the target too.
        name: `${number}${width === 'wide' ? ` ${target}` : ''}, ${entered === 'individual' ? 'certificate' : 'data sheet'}`,
        upward: budget.value.upward,
        downward: budget.value.downward,
        promised: tolerance.known ? tolerance.value : undefined,
        kept: promise.known && promise.value === 'kept',
      },
    ];
  });
  if (rows.length === 0) return undefined;
  const { width: whole, names, size } = layouts[width];
  const reach =
    1.1 * Math.max(...rows.flatMap(({ upward, downward, promised }) => [upward, downward, limitOf(promised)]));
  const middle = names + (whole - names) / 2;
  const at = (fraction: number) => middle + (fraction / reach) * ((whole - names) / 2 - 2.4 * size);
  const pitch = 2.2 * size;
  const top = 2.6 * size;
  const foot = top + rows.length * pitch;
  return {
    width: whole,
    height: foot + 0.8 * size,
    title: `Uncertainty of the readings of ${point.of}`,
    description: `${rows.length} bars, each as far as its reading may lie off with a coverage factor of 2, between the two limits promised. The numbers stand in the table below it.`,
    marks: [
      ...scale(reach, at, top, foot, size, showing),
      ...rows.flatMap((row, index) => rowMarks(row, top + index * pitch, { at, names, size })),
      line(at(0), top - 2, at(0), foot, 'thin'),
    ],
  };
}

function limitOf(promised: Row['promised']): number {
  return promised === undefined ? 0 : Math.min(0.5, Math.max(promised.high, -promised.low));
}

function scale(reach: number, at: (f: number) => number, top: number, foot: number, size: number, showing: Showing) {
  const step = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5].find((each) => reach / each <= 3.5) ?? 10;
  const count = Math.floor(reach / step);
  return Array.from({ length: 2 * count + 1 }, (_, index) => (index - count) * step).flatMap(
    (value): readonly Mark[] => [
      line(at(value), top - 2, at(value), foot, 'grid'),
      label(at(value), top - 0.6 * size, `${value > 0 ? '+' : ''}${showNumber(value * 100, 3, showing.decimal)} %`, {
        size: size - 1,
        anchor: 'middle',
        look: 'quiet',
      }),
    ],
  );
}

function rowMarks(
  { name, upward, downward, promised, kept }: Row,
  y: number,
  { at, names, size }: { at: (f: number) => number; names: number; size: number },
): readonly Mark[] {
  const from = Math.max(at(-downward), names);
  const limits = promised === undefined ? [] : [promised.low, promised.high].filter((each) => at(each) >= names);
  return [
    label(0, y + 1.35 * size, fitted(name, names - 8, size), { size }),
    rectangle(from, y + 0.55 * size, at(upward) - from, 0.9 * size, kept ? 'usable' : 'hatched'),
    ...limits.map((each) => line(at(each), y + 0.1 * size, at(each), y + 1.9 * size, 'target')),
  ];
}
