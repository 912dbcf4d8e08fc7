import type { PasteField } from '../engine/paste/views.ts';
import type { PlaceView, PointRow } from '../engine/views.ts';

/** How a cell is changed: with a part of the catalogue, with a length and its unit, or with free words. */
export type Editing =
  | { readonly by: 'part'; readonly place: PlaceView['place'] }
  | { readonly by: 'length' }
  | { readonly by: 'words' };

/** The columns whose values the file may say more of: how they are known, and where from. */
export type StatedColumn = keyof PointRow['said'];

export interface Column {
  readonly key:
    | 'name'
    | 'location'
    | 'direction'
    | PlaceView['place']
    | 'cableLength'
    | 'covered'
    | 'outcome'
    | 'margin'
    | 'findings';
  readonly title: string;
  /** As it stands over the column, where that is narrower than its name. */
  readonly head?: string;
  readonly text: (row: PointRow) => string;
  readonly editing?: Editing;
  readonly align?: 'number';
  /** Where in the point's entry of the plant file the value stands. */
  readonly path?: readonly string[];
  /** Its own key, where the file may say how the value is known. */
  readonly stated?: StatedColumn;
}

const part = (place: PlaceView['place'], title: string): Column => ({
  key: place,
  title,
  text: (row) => row[place],
  editing: { by: 'part', place },
  path: ['chain', place],
});

/** The table of measuring points, from left to right. */
export const columns: readonly Column[] = [
  { key: 'name', title: 'Point', text: (row) => row.name },
  {
    key: 'location',
    title: 'Location',
    text: (row) => row.location,
    editing: { by: 'words' },
    path: ['location'],
    stated: 'location',
  },
  {
    key: 'direction',
    title: 'Direction',
    text: (row) => row.direction,
    editing: { by: 'words' },
    path: ['direction'],
    stated: 'direction',
  },
  part('transducer', 'Transducer'),
  part('mount', 'Mount'),
  part('cable', 'Cable'),
  {
    key: 'cableLength',
    title: 'Cable length',
    head: 'Length',
    text: (row) => row.cableLength,
    editing: { by: 'length' },
    align: 'number',
    path: ['chain', 'cable-length'],
    stated: 'cableLength',
  },
  part('input', 'Input'),
  {
    key: 'covered',
    title: 'Targets covered',
    head: 'Covered',
    text: (row) => (row.covered === undefined ? `… of ${row.targets}` : `${row.covered} of ${row.targets}`),
    align: 'number',
  },
  { key: 'outcome', title: 'Outcome', text: (row) => row.outcome ?? 'being worked out' },
  { key: 'margin', title: 'Least margin', head: 'Margin', text: (row) => row.margin ?? '', align: 'number' },
  {
    key: 'findings',
    title: 'Findings',
    text: (row) => (row.findings === undefined ? '' : String(row.findings)),
    align: 'number',
  },
];

/** What a column is called where a table is pasted; nothing for one that is worked out. */
export function pasteFieldOf({ key, path }: Column): PasteField | undefined {
  return key === 'name' ? 'point' : (path?.at(-1) as PasteField | undefined);
}

export type ColumnKey = Column['key'];

export function columnCalled(key: ColumnKey): Column {
  return columns.find((column) => column.key === key)!;
}
