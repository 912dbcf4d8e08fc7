import type { Edit } from '@soundpost/server/protocol';

/** What a column of a pasted table may say of a measuring point, as the plant file calls it. */
export const pasteFields = [
  'machine',
  'point',
  'location',
  'direction',
  'installation',
  'surface-temperature',
  'transducer',
  'mount',
  'cable',
  'cable-length',
  'input',
] as const;
export type PasteField = (typeof pasteFields)[number];

/** What the engineer said of a pasted table; what is left out is told from the table. */
export interface PasteChoices {
  /** Whether the first row names the columns. */
  readonly heads?: boolean;
  /** What each column is, in the order of the table. */
  readonly fields?: readonly (PasteField | 'left out')[];
  readonly decimal?: 'point' | 'comma';
}

export interface PasteColumn {
  readonly head: string;
  readonly unit: string | undefined;
  readonly field: PasteField | undefined;
}

/** One value of a pasted table: what stands there, and what is made of it. */
export interface PasteCell {
  readonly field: PasteField;
  readonly pasted: string;
  readonly before: string;
  /** What would stand in the file; absent where the cell says nothing, nothing new, or cannot be taken. */
  readonly taken: string | undefined;
  readonly refused: string | undefined;
}

export interface PasteRow {
  /** The row of the pasted table, from 1. */
  readonly line: number;
  readonly machine: string;
  readonly point: string;
  readonly fate: 'new' | 'changed' | 'as it was' | 'refused';
  /** Why nothing of the row is taken. */
  readonly refused: string | undefined;
  readonly cells: readonly PasteCell[];
}

export interface PasteView {
  readonly heads: boolean;
  readonly columns: readonly PasteColumn[];
  /** A number that two countries read differently, if nobody has said yet how it is written. */
  readonly asksDecimal: string | undefined;
  readonly decimal: 'point' | 'comma' | undefined;
  readonly rows: readonly PasteRow[];
  readonly refusals: number;
  readonly edits: readonly Edit[];
  readonly label: string;
  /** Why the table as a whole cannot be read. */
  readonly unread: string | undefined;
}
