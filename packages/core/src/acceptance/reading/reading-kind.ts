import type { Fields, Sheet } from '../../quantity/index.ts';

/** What is read off by hand, step by step: a table whose rows all have these fields. */
export interface ReadingKind<Kind extends string = string, F extends Fields = Fields> {
  readonly kind: Kind;
  readonly name: string;
  /** How it is taken, in one sentence for the person at the machine. */
  readonly how: string;
  /** What one row of the table holds. */
  readonly row: F;
}

/** A table as it stands in a records file, at a measuring point. */
export interface ReadingOf<Kind extends ReadingKind = ReadingKind> {
  readonly kind: Kind['kind'];
  readonly name: string;
  readonly point: string;
  readonly rows: readonly Sheet<Kind['row']>[];
}

export function readingKind<const Kind extends string, const F extends Fields>(
  definition: ReadingKind<Kind, F>,
): ReadingKind<Kind, F> {
  return definition;
}
