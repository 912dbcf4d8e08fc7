import { useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { PointRow } from '../engine/views.ts';
import { type ColumnKey, columnCalled } from './columns.ts';
import { chainWaits, rowEdits, wordsAtCell } from './row-edits.ts';

/** What was typed into a cell and is not in the file: on its way, or refused with these words. */
export interface TypedCell {
  readonly text: string;
  readonly refused: string | undefined;
}

export type TypedRow = ReadonlyMap<ColumnKey, TypedCell>;

export interface TypedCells {
  readonly row: (of: string) => TypedRow | undefined;
  readonly type: (row: PointRow, column: ColumnKey, text: string) => Promise<void>;
  readonly giveUp: (of: string, column: ColumnKey) => void;
  readonly refusals: number;
}

/** What was left in cells when the table was last left; it is there again when one comes back. */
let left: ReadonlyMap<string, TypedRow> = new Map();

/**
 * Keeps what was typed until the file takes it. The values of one point are tried together, so that a chain can be
 * begun cell by cell: what is refused for want of a neighbour is taken with the neighbour.
 */
export function useTypedCells(): TypedCells {
  const store = usePlantStore();
  const [rows, setRows] = useState(left);
  const change = (of: string, changed: (row: TypedRow) => TypedRow) =>
    setRows((before) => {
      const row = changed(before.get(of) ?? new Map());
      const next = new Map(before);
      if (row.size === 0) next.delete(of);
      else next.set(of, row);
      left = next;
      return next;
    });
  const type = async (row: PointRow, column: ColumnKey, text: string) => {
    const typed = new Map(rows.get(row.of)).set(column, { text, refused: undefined });
    change(row.of, () => typed);
    const texts = new Map([...typed].map(([key, cell]) => [key, cell.text]));
    const refused = chainWaits(row, texts) ?? (await act(row, column, texts));
    // What was typed meanwhile is on a way of its own.
    change(row.of, (now) => {
      const next = new Map(now);
      for (const [key, cell] of typed) {
        if (next.get(key)?.text !== cell.text) continue;
        if (refused === undefined) next.delete(key);
        else next.set(key, { ...cell, refused });
      }
      return next;
    });
  };
  const act = async (row: PointRow, column: ColumnKey, texts: ReadonlyMap<ColumnKey, string>) => {
    const label = `${columnCalled(column).title} of ${row.name}: ${texts.get(column)}`;
    try {
      const refused = await store.act(label, rowEdits(row, texts));
      return refused === undefined ? undefined : wordsAtCell(refused);
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  };
  const giveUp = (of: string, column: ColumnKey) =>
    change(of, (row) => new Map([...row].filter(([key]) => key !== column)));
  const refused = [...rows.values()].flatMap((row) => [...row.values()]).filter((cell) => cell.refused !== undefined);
  return { row: (of) => rows.get(of), type, giveUp, refusals: refused.length };
}
