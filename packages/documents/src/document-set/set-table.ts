import { spelledUnit } from '@soundpost/core';
import { cellText } from './cells.ts';
import type { Cell, SetColumn, SetTable } from './record.ts';

/** A column as a document describes it: its head, and what it tells of each row. */
export interface TableColumn<Row> extends Omit<SetColumn, 'width'> {
  readonly width?: number;
  cell(row: Row): Cell;
}

export function textColumn<Row>(head: string, cell: (row: Row) => Cell, width = 2): TableColumn<Row> {
  return { head, kind: 'text', width, cell };
}

/** Numbers in one unit, which stands in the head. */
export function numberColumn<Row>(head: string, unit: string, cell: (row: Row) => Cell, width = 1): TableColumn<Row> {
  return { head, kind: 'number', unit: spelledUnit(unit), width, cell };
}

/** Numbers each with its own unit. */
export function measureColumn<Row>(head: string, cell: (row: Row) => Cell, width = 1.4): TableColumn<Row> {
  return { head, kind: 'measure', width, cell };
}

/** To be filled in on the plant. */
export function blankColumn<Row>(head: string, width = 1.4): TableColumn<Row> {
  return { head, kind: 'blank', width, cell: () => ({ is: 'blank' }) };
}

export function setTable<Row>(
  name: string,
  caption: string,
  columns: readonly TableColumn<Row>[],
  rows: readonly Row[],
  empty: string,
): SetTable {
  return {
    is: 'table',
    name,
    caption,
    columns: columns.map(({ head, kind, unit, width = 1 }) => ({
      head,
      kind,
      width,
      ...(unit === undefined || unit === '' ? {} : { unit }),
    })),
    rows: rows.map((row) => columns.map((column) => column.cell(row))),
    empty,
  };
}

/** What a head says on paper: `Length, m`. */
export function headText({ head, unit }: SetColumn): string {
  return unit === undefined ? head : `${head}, ${unit}`;
}

/** Everything a table could not tell, once each, in words. */
export function unknownIn({ rows }: SetTable): readonly string[] {
  return [...new Set(rows.flat().flatMap((cell) => (cell.is === 'unknown' ? [cellText(cell)] : [])))];
}
