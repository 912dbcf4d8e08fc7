/** What the page asks to have issued. */
export interface IssueAsked {
  /** Hash of the plant file the page shows: what is issued is what was looked at. */
  readonly base: string;
  /** Name of a folder beside the plant file. */
  readonly folder: string;
  readonly revision: string;
  readonly documents: readonly string[];
  readonly forms: readonly string[];
  readonly paper: string;
  readonly preliminary: boolean;
  readonly showing: { readonly units: 'metric' | 'us'; readonly decimal: 'point' | 'comma' };
}

export interface IssuedFileView {
  readonly path: string;
  readonly title: string;
  readonly sha256: string;
  readonly bytes?: number;
  readonly pages?: number;
}

/** A revision that stands in a folder beside the plant. */
export interface IssuedRevision {
  /** Of its folder: `revision-A`. */
  readonly name: string;
  readonly revision: string;
  readonly date: string;
  readonly contentHash: string;
  readonly preliminary: boolean;
  readonly files: readonly IssuedFileView[];
}

export interface IssuedRevisions {
  readonly folder: string;
  /** Where that folder is, in full. */
  readonly path: string;
  readonly revisions: readonly IssuedRevision[];
}

/** What an issued revision was made from. */
export interface IssuedTexts {
  readonly plant: string;
  readonly catalogues: readonly (readonly [name: string, text: string])[];
  readonly revision: string;
}

/** What is told while a set is issued, one after the other; the last is no step. */
export type IssueWord =
  | { readonly is: 'step'; readonly what: string; readonly done?: number; readonly of?: number }
  | { readonly is: 'issued'; readonly name: string; readonly written: boolean; readonly kept?: string }
  | { readonly is: 'blocked'; readonly findings: number }
  | { readonly is: 'refused'; readonly words: string };
