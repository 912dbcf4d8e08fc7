import type { Design, UnitSystem } from '@soundpost/core';

/** How a document is issued. Dates and hashes are told, never taken from a clock. */
export interface DocumentOptions {
  readonly units?: UnitSystem;
  readonly issuedOn?: string;
  readonly contentHash?: string;
}

/** A kind of document: one file, one line in `kinds.ts`. A view of a design that computes nothing but its layout. */
export interface DocumentKind {
  readonly kind: string;
  readonly title: string;
  /** Who reads it, and what for. */
  readonly readers: string;
  /** `html`: how the file is called. */
  readonly extension: string;
  make(design: Design, options?: DocumentOptions): string;
}

export function documentKind(definition: DocumentKind): DocumentKind {
  return definition;
}
