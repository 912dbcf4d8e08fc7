import type { Edit } from '@soundpost/server/protocol';
import { noOrigin, type Origin, originWords } from '../engine/origin.ts';
import type { PointRow } from '../engine/views.ts';
import { type ColumnKey, columnCalled } from './columns.ts';
import { rowEdits } from './row-edits.ts';

/** One value for many points: which of them it changes, and which it leaves, and why. */
export interface BulkChange {
  readonly column: ColumnKey;
  readonly value: string;
  readonly changed: readonly PointRow[];
  readonly same: readonly PointRow[];
  /** Points that have no chain to put it in. */
  readonly bare: readonly PointRow[];
  /** Whether the new values may say how they are known. */
  readonly stated: boolean;
  /** What is said of each value that goes, by its point; points of whose value nothing is said are left out. */
  readonly said: ReadonlyMap<string, string>;
  readonly edits: readonly Edit[];
  readonly label: string;
}

export function bulkChange(
  rows: readonly PointRow[],
  column: ColumnKey,
  value: string,
  origin: Origin = noOrigin,
): BulkChange {
  const { text, title, path, stated } = columnCalled(column);
  const bare = rows.filter((row) => path?.[0] === 'chain' && row.cable === '');
  const whole = rows.filter((row) => !bare.includes(row));
  const changed = whole.filter((row) => text(row) !== value);
  return {
    column,
    value,
    changed,
    same: whole.filter((row) => text(row) === value),
    bare,
    stated: stated !== undefined && value !== 'unknown',
    said: new Map(
      changed.flatMap((row) => {
        const said = stated === undefined ? undefined : row.said[stated];
        return said === undefined ? [] : [[row.of, originWords(said)] as const];
      }),
    ),
    edits: changed.flatMap((row) => rowEdits(row, new Map([[column, value]]), origin)),
    label: `Set ${title.toLowerCase()} of ${changed.length} ${changed.length === 1 ? 'point' : 'points'} to ${value}`,
  };
}
