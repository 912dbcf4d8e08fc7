import type { Shelf } from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import type { CitedView } from '../working-views.ts';

/** Whose an entry is: of this plant alone, or of a catalogue the plant names; `changed` hides one of a catalogue. */
export type Owner = 'plant' | 'catalogue' | 'changed';

export interface EntryView {
  readonly shelf: Shelf;
  readonly name: string;
  readonly kindName: string;
  readonly remark: string;
  readonly owner: Owner;
  /** How many of what its kind asks for it does not state. */
  readonly missing: number;
  readonly used: number;
  /** What a search looks through. */
  readonly words: string;
}

export interface KindView {
  readonly kind: string;
  readonly name: string;
}

export interface ShelfView {
  readonly shelf: Shelf;
  readonly kinds: readonly KindView[];
  readonly entries: readonly EntryView[];
}

/** One line of a data sheet. */
export interface FieldView {
  readonly key: string;
  readonly symbol: string | undefined;
  readonly meaning: string;
  readonly expected: string;
  readonly example: string;
  readonly optional: boolean;
  readonly choices: readonly string[];
  readonly state: 'stated' | 'unknown' | 'left out';
  readonly shown: string;
  /** As it stands in the file, and as a form begins. */
  readonly written: string;
  readonly status: string;
  readonly source: string;
  readonly ask: string;
  readonly between: string;
  /** What cannot be told while it is not stated, and where. */
  readonly leavesOpen: readonly string[];
}

export interface EmptySheet {
  readonly fields: readonly FieldView[];
  readonly statuses: readonly string[];
}

export interface PartView {
  readonly shelf: Shelf;
  readonly name: string;
  readonly kind: string;
  readonly kindName: string;
  readonly owner: Owner;
  readonly fields: readonly FieldView[];
  readonly sources: readonly CitedView[];
  readonly uses: readonly { readonly of: string; readonly place: string }[];
}

/** A field of the form: its value as typed, how it is known, and from where. */
export interface TypedField {
  readonly text: string;
  readonly status: string;
  readonly source: string;
}

export interface PartTyped {
  readonly shelf: Shelf;
  readonly kind: string;
  readonly name: string;
  /** The entry that is changed; nothing where a new one is made. */
  readonly changes: string | undefined;
  /** Fields that were touched, by their keys; the others stay as they are. */
  readonly fields: Readonly<Record<string, TypedField>>;
}

export type PartEdits =
  | { readonly refused: Readonly<Record<string, string>> }
  | { readonly label: string; readonly edits: readonly Edit[] };
