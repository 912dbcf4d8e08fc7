import type { Edit } from '@soundpost/files';

export type * from './issuing/protocol.ts';
export type { Edit };

/** What one act of the engineer changed, and what undoes it. */
export interface Step {
  readonly label: string;
  readonly edits: readonly Edit[];
  readonly undo: readonly Edit[];
  /** When, as ISO 8601. */
  readonly at: string;
}

/** The history of a plant file; the first `done` steps are in the file, the others were undone. */
export interface Journal {
  readonly steps: readonly Step[];
  readonly done: number;
}

/** A plant file as the server holds it. */
export interface PlantOnDisk {
  readonly path: string;
  readonly name: string;
  readonly text: string;
  /** SHA-256 of its bytes. */
  readonly hash: string;
  readonly catalogues: Readonly<Record<string, { readonly path: string; readonly text: string }>>;
  readonly journal: Journal;
}

/** What a save asks for: `base` is the hash of the file the change was made from. */
export interface Saving {
  readonly base: string;
  readonly text: string;
  readonly journal: Journal;
}

export interface Saved {
  readonly hash: string;
}

/** The file on disk is another than the change was made from; nothing was written. */
export interface Conflict {
  readonly text: string;
  readonly hash: string;
}
