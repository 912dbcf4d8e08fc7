import type { Block, DocumentRecord, DocumentSheet, SetTable } from './record.ts';

/** So many cells are some hundred pages; what sets them holds all of them at once. */
export const cellsInPart = 10_000;

/** How much a block asks of whoever sets it, in cells of a table. */
function cellsOf(block: Block): number {
  if (block.is === 'table') return block.rows.length * block.columns.length;
  return block.is === 'list' ? block.entries.length * 3 : 3;
}

/**
 * A document whose lists grow with the plant, in parts that do not: its sheets in order, a table or list too long for
 * one part continued in the next. A document of sheets that are each made alone is one part: volumes bound it. What is
 * short enough is its only part, as it is.
 */
export function partsOf(record: DocumentRecord, most = cellsInPart): readonly DocumentRecord[] {
  const parts: DocumentSheet[][] = [];
  let room = 0;
  for (const sheet of record.sheets) {
    const pieces = sheet.from === undefined ? cutBlocks(sheet, most) : [{ sheet, cells: 3 }];
    for (const { sheet: piece, cells } of pieces) {
      if (parts.length === 0 || cells > room) {
        parts.push([]);
        room = most;
      }
      parts.at(-1)!.push(piece);
      room -= cells;
    }
  }
  if (parts.length <= 1) return [record];
  return parts.map((sheets, at) => ({
    ...record,
    title: `${record.title}, part ${at + 1} of ${parts.length}`,
    sheets,
  }));
}

interface CutSheet {
  readonly sheet: DocumentSheet;
  readonly cells: number;
}

/** A sheet of at most so many cells as it is; a longer one in pieces of at most so many, each under its title. */
function cutBlocks(sheet: DocumentSheet, most: number): readonly CutSheet[] {
  const blocks = sheet.blocks.flatMap((each) => cutBlock(each, most));
  const pieces: Block[][] = [];
  const weights: number[] = [];
  for (const block of blocks) {
    const cells = cellsOf(block);
    if (pieces.length === 0 || weights.at(-1)! + cells > most) {
      // A heading goes with what it heads.
      const heads = pieces.at(-1)?.at(-1)?.is === 'heading' ? [pieces.at(-1)!.pop()!] : [];
      pieces.push([...heads]);
      weights.push(0);
    }
    pieces.at(-1)!.push(block);
    weights.push(weights.pop()! + cells);
  }
  if (pieces.length <= 1) return [{ sheet, cells: weights[0] ?? 0 }];
  return pieces.map((piece, at) => ({
    sheet: { title: at === 0 ? sheet.title : `${sheet.title}, continued`, blocks: piece },
    cells: weights[at]!,
  }));
}

function cutBlock(block: Block, most: number): readonly Block[] {
  if (cellsOf(block) <= most) return [block];
  if (block.is === 'list') {
    return slices(block.entries, Math.floor(most / 3)).map(({ slice }) => ({ is: 'list', entries: slice }));
  }
  if (block.is !== 'table') return [block];
  const { rows, caption } = block;
  const inPiece = Math.max(1, Math.floor(most / block.columns.length));
  return slices(rows, inPiece).map(
    ({ slice, from }): SetTable => ({
      ...block,
      caption: `${caption} (rows ${from + 1} to ${from + slice.length} of ${rows.length})`,
      rows: slice,
    }),
  );
}

function slices<T>(
  all: readonly T[],
  most: number,
): readonly { readonly slice: readonly T[]; readonly from: number }[] {
  return Array.from({ length: Math.ceil(all.length / most) }, (_, at) => ({
    slice: all.slice(at * most, (at + 1) * most),
    from: at * most,
  }));
}
