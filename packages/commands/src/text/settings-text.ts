import {
  type PointSettings,
  type Showing,
  type SpectrumSet,
  showBand,
  showMeasure,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import { blank, type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';

/** How records are to be taken, and why each setting is what it is. */
export function settingsLines(settings: PointSettings, { showing, width }: Manner): readonly Line[] {
  const { sets, unknown } = settings;
  if (sets.length === 0 && unknown.length === 0) return [];
  const columns: Column[] = [
    { head: 'record' },
    { head: 'up to, Hz', align: 'right' },
    { head: 'lines', align: 'right' },
    { head: 'spacing, Hz', align: 'decimal' },
    { head: 'lasts, s', align: 'decimal' },
    { head: 'sampled, Hz', align: 'right' },
    { head: 'window, averages' },
  ];
  const number = (value: number) => showNumber(value, 4, showing.decimal);
  const rows = sets.map((set) => [
    set.name.replaceAll('-', ' '),
    number(set.highestFrequency),
    String(set.lines),
    number(set.resolution),
    number(set.recordLength),
    number(set.samplingRate),
    `${set.window}, ${set.averages}`,
  ]);
  return [
    blank,
    ...(sets.length === 0 ? [] : plainLines(table(columns, rows, width, '  '))),
    ...orderLines(sets, showing, width),
    ...sets.flatMap((set) => setReasons(set, showing, width)),
    ...unknown.flatMap((each) => paragraph(`  ? not required, since not known: ${each}`, width, '  ')),
  ];
}

/** Records sampled by the turn: their orders, which stand still whatever the speed does. */
function orderLines(sets: readonly SpectrumSet[], { decimal }: Showing, width: number): readonly Line[] {
  const number = (value: number) => showNumber(value, 3, decimal);
  const rows = sets.flatMap(({ name, orders }) =>
    orders === undefined
      ? []
      : [
          [
            name.replaceAll('-', ' '),
            orders.of ?? 'its shaft',
            number(orders.samplesPerTurn),
            number(orders.turns),
            number(orders.highest),
            number(orders.resolution),
          ],
        ],
  );
  if (rows.length === 0) return [];
  const columns: Column[] = [
    { head: 'by the turn' },
    { head: 'of' },
    { head: 'samples a turn', align: 'right' },
    { head: 'turns', align: 'right' },
    { head: 'up to order', align: 'right' },
    { head: 'orders apart', align: 'decimal' },
  ];
  return [blank, ...plainLines(table(columns, rows, width, '  '))];
}

function setReasons(set: SpectrumSet, showing: Showing, width: number): readonly Line[] {
  const envelope =
    set.envelopeBand === undefined
      ? ''
      : `; demodulated ${showBand(set.envelopeBand, showing)}${
          set.rawSamplingRate === undefined
            ? ''
            : `, sampled raw at ${showQuantity('frequency', set.rawSamplingRate, showing)}`
        }`;
  return [
    ...paragraph(`  ${set.name.replaceAll('-', ' ')}: ${set.purpose}${envelope}`, width, '  '),
    ...set.reasons.flatMap((each) => paragraph(`  - ${showMeasure(each, showing)}`, width, '  ')),
  ];
}
