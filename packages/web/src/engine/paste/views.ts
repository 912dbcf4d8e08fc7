import type { Edit } from '@soundpost/server/protocol';
import type { Origin } from '../origin.ts';

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
  /** How the pasted values are known, and where they come from. */
  readonly origin?: Origin;
  /** Where in the table of points the hand was. */
  readonly at?: PasteAt;
  /** Whether a row goes to the point at its place below the hand, or to the point it names. */
  readonly placing?: Placing;
}

export type Placing = 'by place' | 'by name';

/** A cell of the table of points: a block without heads goes there as a spreadsheet would put it. */
export interface PasteAt {
  /** The points from that cell down, as the table lists them. */
  readonly points: readonly string[];
  /** What the columns from that cell to the right hold; nothing where a column is worked out and not typed. */
  readonly fields: readonly (PasteField | undefined)[];
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
  /** What the file says of the value that goes, such as `measured, walked on the tray`; empty where it says nothing. */
  readonly said: string;
  /** Whether the new value may say how it is known. */
  readonly stated: boolean;
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
  readonly placing: Placing;
  /** Whether the rows can go to the points below the hand. */
  readonly mayPlace: boolean;
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
