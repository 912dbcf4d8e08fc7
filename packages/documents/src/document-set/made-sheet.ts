import type { Block, DocumentSheet } from './record.ts';

/**
 * A sheet that is made each time its blocks are looked at, and held by nobody: a document of thousands of points never
 * stands in memory as a whole. `make` takes all it tells from `from` and from how values are shown, so that the same
 * `from` gives the same sheet.
 */
export function madeSheet<const From extends readonly object[]>(
  title: string,
  from: From,
  make: (...from: From) => readonly Block[],
): DocumentSheet {
  return {
    title,
    from,
    get blocks() {
      return make(...from);
    },
  };
}
