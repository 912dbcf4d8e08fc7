import { useCallback, useState } from 'react';
import { usePlantStore } from '../app/plant-context.tsx';
import type { PointRow } from '../engine/views.ts';
import { type ColumnKey, columnCalled } from './columns.ts';
import { rowEdits, wordsAtCell } from './row-edits.ts';

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

/**
 * Keeps what was typed until the file takes it. The values of one point are tried together, so that a chain can be
 * begun cell by cell: what is refused for want of a neighbour is taken with the neighbour.
 */
export function useTypedCells(): TypedCells {
  const store = usePlantStore();
  const [rows, setRows] = useState<ReadonlyMap<string, TypedRow>>(new Map());
  const put = useCallback((of: string, row: TypedRow) => {
    setRows((before) => {
      const next = new Map(before);
      if (row.size === 0) next.delete(of);
      else next.set(of, row);
      return next;
    });
  }, []);
  const type = async (row: PointRow, column: ColumnKey, text: string) => {
    const typed = new Map(rows.get(row.of)).set(column, { text, refused: undefined });
    put(row.of, typed);
    const edits = rowEdits(row, new Map([...typed].map(([key, cell]) => [key, cell.text])));
    let refused: string | undefined;
    try {
      refused = await store.act(`${columnCalled(column).title} of ${row.name}: ${text}`, edits);
    } catch (error) {
      refused = error instanceof Error ? error.message : String(error);
    }
    const words = refused === undefined ? undefined : wordsAtCell(refused);
    put(
      row.of,
      words === undefined ? new Map() : new Map([...typed].map(([key, cell]) => [key, { ...cell, refused: words }])),
    );
  };
  const giveUp = (of: string, column: ColumnKey) => {
    const row = new Map(rows.get(of));
    row.delete(column);
    put(of, row);
  };
  const refusals = [...rows.values()].flatMap((row) => [...row.values()]).filter((cell) => cell.refused !== undefined);
  return { row: (of) => rows.get(of), type, giveUp, refusals: refusals.length };
}
