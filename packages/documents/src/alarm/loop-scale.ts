import {
  type DesignedPoint,
  faultCurrents,
  fullScale,
  liveZero,
  measuringCurrents,
  type RegisterRow,
  type Showing,
  showNumber,
} from '@soundpost/core';
import { linearAxis } from '../drawing/axis.ts';
import { type Drawing, label, line, type Mark, rectangle, type Width } from '../drawing/drawing.ts';
import { boldness, textWidth } from '../drawing/text-extent.ts';

const layouts: Readonly<Record<Width, { width: number; side: number; size: number }>> = {
  wide: { width: 760, side: 16, size: 12 },
  narrow: { width: 358, side: 8, size: 10 },
};

/** What the scale begins and ends with, in amperes: beyond both failure signals. */
const ends = { low: 0.003, high: 0.022 };

/** The loop as a scale of current: what each stretch of it tells, and where the levels of the register stand on it. */
export function loopScaleDrawing(designed: DesignedPoint, showing: Showing, width: Width): Drawing | undefined {
  const rows = (designed.alarms?.register ?? []).filter((row) => row.current?.known === true);
  if (designed.appraisal?.prediction.loop === undefined) return undefined;
  const { width: whole, side, size } = layouts[width];
  const axis = linearAxis(ends, { from: side, to: whole - side }, width === 'wide' ? 19 : 8, (amperes) =>
    showNumber(amperes * 1000, 3),
  );
  const stems = stemsOf(rows, (amperes) => axis.at(amperes), whole, size);
  const top = (Math.max(1, ...stems.map((each) => each.floor)) * 1.35 + 0.4) * size;
  const deep = 2 * size;
  const stretches: readonly { low: number; high: number; look: 'hatched' | 'window' | 'paper' }[] = [
    { low: ends.low, high: faultCurrents.low, look: 'hatched' },
    { low: faultCurrents.low, high: measuringCurrents.low, look: 'paper' },
    { low: measuringCurrents.low, high: measuringCurrents.high, look: 'window' },
    { low: measuringCurrents.high, high: faultCurrents.high, look: 'paper' },
    { low: faultCurrents.high, high: ends.high, look: 'hatched' },
  ];
  const bottom = top + deep;
  return {
    width: whole,
    height: bottom + 3.4 * size,
    title: `Current loop of ${designed.point.of}`,
    description: `${rows.map((row) => `${row.name} at ${milliamperes(currentOf(row), showing)}`).join(', ')}; a value is told from ${milliamperes(measuringCurrents.low, showing)} to ${milliamperes(measuringCurrents.high, showing)}, failure at or below ${milliamperes(faultCurrents.low, showing)} and at or above ${milliamperes(faultCurrents.high, showing)}.`,
    marks: [
      ...stretches.map((each) =>
        rectangle(axis.at(each.low), top, axis.at(each.high) - axis.at(each.low), deep, each.look),
      ),
      ...stems.flatMap(({ row, x, left, floor, text }): readonly Mark[] => {
        const y = top - (floor - 1) * 1.35 * size - 0.45 * size;
        const look = row.name === 'alert' || row.name === 'trip' ? 'target' : 'ink';
        return [line(x, y + 0.3 * size, x, bottom, look), label(left, y, text, { size, look: 'strong' })];
      }),
      ...axis.ticks.map((tick) => line(tick.at, bottom, tick.at, bottom + 4, 'thin')),
      ...axis.ticks.map((tick) => label(tick.at, bottom + 1.5 * size, tick.text ?? '', { size, anchor: 'middle' })),
      label((axis.at(liveZero) + axis.at(fullScale)) / 2, bottom + 2.9 * size, 'value told', {
        size,
        anchor: 'middle',
        look: 'quiet',
      }),
      label(side, bottom + 2.9 * size, width === 'wide' ? 'failure signal (hatched)' : 'failure', {
        size,
        look: 'quiet',
      }),
      label(whole - side, bottom + 2.9 * size, 'mA', { size, anchor: 'end', look: 'quiet' }),
    ],
  };
}

function currentOf(row: RegisterRow): number {
  return row.current?.known === true ? row.current.value : ends.low;
}

function milliamperes(amperes: number, showing: Showing): string {
  return `${showNumber(amperes * 1000, 4, showing.decimal)} mA`;
}

interface Stem {
  readonly row: RegisterRow;
  readonly x: number;
  readonly left: number;
  readonly text: string;
  /** 1 is just above the scale. */
  readonly floor: number;
}

/** Labels from right to left, each on the lowest floor on which it stands clear of those to its right and their stems. */
function stemsOf(
  rows: readonly RegisterRow[],
  at: (amperes: number) => number,
  whole: number,
  size: number,
): readonly Stem[] {
  const stems: Stem[] = [];
  for (const row of [...rows].sort((a, b) => currentOf(b) - currentOf(a))) {
    const text = `${row.name} ${showNumber(currentOf(row) * 1000, 4)}`;
    const x = at(currentOf(row));
    const width = textWidth(text, size) * boldness;
    const left = Math.min(x - 3, whole - width);
    const inTheWay = stems.filter((each) => each.x < left + width + 4 || each.left < left + width + 4);
    stems.push({ row, x, left, text, floor: Math.max(0, ...inTheWay.map((each) => each.floor)) + 1 });
  }
  return stems;
}
