import {
  type Coincidence,
  exactRatio,
  type FrequencyRow,
  type FrequencyTable,
  kindOf,
  type LineMultiple,
  type OperatingState,
  type Operation,
  type Showing,
  showFraction,
  showNumber,
  showQuantity,
  type Train,
} from '@soundpost/core';
import { blank, heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, type Row, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { answerText, cellText } from './values-text.ts';

/** So many states stand side by side; more of them go into further tables. */
const statesAbreast = 3;

/** The reference of an operating state: a speed where a shaft sets it, a line frequency where a motor does. */
export function referenceText(operation: Operation, at: number, showing: Showing): string {
  return operation.by === 'shaft' ? showQuantity('shaft speed', at, showing) : showQuantity('frequency', at, showing);
}

function referenceWords(operation: Operation): string {
  return operation.by === 'shaft' ? `speed of shaft '${operation.shaft}'` : `line frequency of '${operation.motor}'`;
}

export function frequencyLines(table_: FrequencyTable, train: Train, manner: Manner): readonly Line[] {
  const { operation } = train;
  const groups: OperatingState[][] = [];
  for (const [index, state] of table_.states.entries()) {
    if (index % statesAbreast === 0) groups.push([]);
    groups.at(-1)!.push(state);
  }
  return [
    ...operatedLines(table_, operation, manner),
    ...groups.flatMap((states) => [blank, ...shaftLines(table_, states, manner)]),
    ...groups.flatMap((states, index) => [blank, ...lineLines(table_, train, states, index === 0, manner)]),
    ...assumedLines(table_.rows, manner),
  ];
}

function operatedLines(table_: FrequencyTable, operation: Operation, { showing, width }: Manner): readonly Line[] {
  const states = table_.states
    .map((state) => `${state.name} ${answerText(state.at, (at) => referenceText(operation, at, showing))}`)
    .join(', ');
  return paragraph(`  Run by ${referenceWords(operation)}: ${states}.`, width, '  ');
}

function shaftLines(table_: FrequencyTable, states: readonly OperatingState[], manner: Manner): readonly Line[] {
  const columns: Column[] = [
    { head: 'shaft' },
    { head: `ratio to '${table_.reference}'`, align: 'decimal' },
    ...states.map((state): Column => ({ head: `${state.name}, r/min`, align: 'decimal' })),
  ];
  const rows = table_.shafts.map((shaft) => [
    shaft.shaft,
    answerText(shaft.ratio, (ratio) => ratio),
    ...states.map((state) =>
      cellText(cellOf(shaft.cells, state).frequency, (f) => showNumber(f * 60, 5, manner.showing.decimal)),
    ),
  ]);
  return plainLines(table(columns, rows, manner.width, '  '));
}

function lineLines(
  table_: FrequencyTable,
  train: Train,
  states: readonly OperatingState[],
  withRange: boolean,
  manner: Manner,
): readonly Line[] {
  const number = (value: number) => showNumber(value, 4, manner.showing.decimal);
  const columns: Column[] = [
    { head: 'line' },
    { head: 'follows from' },
    ...states.map((state): Column => ({ head: `${state.name}, Hz`, align: 'decimal' })),
    ...(withRange ? [{ head: 'range, Hz' }] : []),
  ];
  const cells = (row: FrequencyRow): readonly string[] => [
    `  ${row.line.name.slice(row.line.element.length + 1)}`,
    formText(row),
    ...states.map((state) => cellText(cellOf(row.cells, state).frequency, number)),
    ...(withRange
      ? [
          cellText(row.range, ({ low, high }) =>
            number(low) === number(high) ? number(low) : `${number(low)}..${number(high)}`,
          ),
        ]
      : []),
  ];
  const rows = table_.rows.flatMap((row, index): readonly Row[] =>
    row.line.element === table_.rows[index - 1]?.line.element && row.line.madeBy === table_.rows[index - 1]?.line.madeBy
      ? [cells(row)]
      : [{ section: makerText(row, train) }, cells(row)],
  );
  const slip = table_.rows.some((row) => row.line.slip.low !== 0 || row.line.slip.high !== 0);
  return [
    ...plainLines(table(columns, rows, manner.width, '  ')),
    ...(withRange && slip
      ? paragraph('  The range includes slip of rolling elements and belts.', manner.width, '  ')
      : []),
    ...(withRange ? nameNote(table_.rows, manner) : []),
  ];
}

function makerText({ line }: FrequencyRow, train: Train): string {
  const element = train.elements.find((each) => each.name === line.element);
  if (line.madeBy === 'shaft' || element === undefined) return `shaft ${line.element}`;
  return `${line.element}: ${kindOf(element).name.toLowerCase()}`;
}

function nameNote(rows: readonly FrequencyRow[], { width }: Manner): readonly Line[] {
  const example = rows.find((row) => row.line.madeBy === 'element')?.line.name;
  return example === undefined
    ? []
    : paragraph(`  In a plant file a line is named after its element: '${example} at highest'.`, width, '  ');
}

function cellOf<C extends { readonly state: string }>(cells: readonly C[], state: OperatingState): C {
  return cells.find((each) => each.state === state.name)!;
}

function formText(row: FrequencyRow): string {
  const exact = exactRatio(row.line);
  if (row.form !== undefined) return row.form;
  return exact === undefined ? '?' : `${showFraction(exact.ratio)} × ${exact.of}`;
}

function assumedLines(rows: readonly FrequencyRow[], { width }: Manner): readonly Line[] {
  const assumed = rows.filter((row) => row.line.assumed.length > 0);
  const byWhat = new Map<string, string[]>();
  for (const row of assumed) {
    const what = row.line.assumed.join(', ');
    byWhat.set(what, [...(byWhat.get(what) ?? []), row.line.name]);
  }
  return [...byWhat].flatMap(([what, names]) => paragraph(`  Assumed: ${what}; for ${names.join(', ')}.`, width, '  '));
}

function multipleText({ line, harmonic }: LineMultiple): string {
  return harmonic === 1 ? line.name : `${harmonic} × ${line.name}`;
}

/** Pairs that come close, and what tells them apart where they are nearest. */
export function coincidenceLines(found: readonly Coincidence[], operation: Operation, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  if (found.length === 0) return paragraph('  No two lines come close anywhere in the range.', width, '  ');
  const columns: Column[] = [
    { head: 'these two' },
    { head: 'nearest at' },
    { head: 'apart, Hz', align: 'decimal' },
    { head: 'lines, Hz', align: 'decimal' },
    { head: 'record, s', align: 'decimal' },
  ];
  const number = (value: number | undefined) => (value === undefined ? '–' : showNumber(value, 3, showing.decimal));
  const rows = found.map((each) => [
    `${multipleText(each.a)}\n${multipleText(each.b)}`,
    nearestText(each, operation, showing),
    number(each.nearest.difference),
    number(each.nearest.resolution),
    number(each.nearest.recordLength),
  ]);
  const notes = found.flatMap((each) => coincidenceNote(each, operation, showing));
  return [
    ...plainLines(table(columns, rows, width, '  ')),
    ...paragraph('  Lines and record: what a Hann spectrum needs there to tell the two apart.', width, '  '),
    ...notes.flatMap((note) => paragraph(`  - ${note}`, width, '  ')),
  ];
}

function nearestText(each: Coincidence, operation: Operation, showing: Showing): string {
  if (each.separable === 'never') return 'every speed';
  return `${stateOf(each.nearest, each.states) ?? ''} ${referenceText(operation, each.nearest.at, showing)}`.trim();
}

function stateOf(nearest: Coincidence['nearest'], states: Coincidence['states']): string | undefined {
  return states.find((state) => Math.abs(state.at - nearest.at) < 1e-9 * Math.max(1, nearest.at))?.state;
}

function coincidenceNote(each: Coincidence, operation: Operation, showing: Showing): readonly string[] {
  const pair = `${multipleText(each.a)} and ${multipleText(each.b)}`;
  if (each.separable === 'never') {
    const means = each.instead === undefined ? '' : ` Instead: ${each.instead}.`;
    return [`${pair} are one frequency at every speed: not separable by spectrum.${means}`];
  }
  const notes: string[] = [];
  if (each.separable === 'not everywhere') {
    const where = each.crossings.map((at) => referenceText(operation, at, showing)).join(', ');
    notes.push(`${pair} cross at ${where}: not separable by spectrum there.`);
  }
  if (each.differBy !== undefined) notes.push(`${pair} always lie ${each.differBy} apart.`);
  if (each.spread > each.nearest.difference) {
    notes.push(`${pair}: slip may move them ${showQuantity('frequency', each.spread, showing)} against each other.`);
  }
  return notes;
}

export function machineHeading(name: string, title: string, { width }: Manner): readonly Line[] {
  return heading(`${name}: ${title}`, width);
}
