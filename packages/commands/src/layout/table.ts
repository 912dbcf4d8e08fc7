import { padded, screenWidth } from './width.ts';
import { narrowest, wrapped } from './wrap.ts';

/** A column: its head, and whether its cells stand left, right, or with their decimal signs under one another. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right' | 'decimal';
}

const gap = '  ';
/** Stands for a space that trimming must leave alone, until the table is whole. */
const held = '\ue000';

/** A line across the table, above the rows it speaks of. */
export interface Section {
  readonly section: string;
}

export type Row = readonly string[] | Section;

const isCells = (row: Row): row is readonly string[] => Array.isArray(row);

/** A table within `width` columns: cells are wrapped where they must be, never cut. */
export function table(columns: readonly Column[], rows: readonly Row[], width: number, indent = ''): readonly string[] {
  const aligned = alignedRows(columns, rows);
  const widths = widthsOf(columns, aligned.filter(isCells), width - screenWidth(indent));
  const line = (cells: readonly string[]) => rowLines(columns, cells, widths, indent);
  const rule = indent + widths.map((each) => '─'.repeat(each)).join(gap);
  return [
    ...line(columns.map((column) => column.head)),
    rule,
    ...aligned.flatMap((row) =>
      isCells(row) ? line(row) : wrapped(row.section, width - screenWidth(indent)).map((each) => indent + each),
    ),
  ];
}

function alignedRows(columns: readonly Column[], rows: readonly Row[]): readonly Row[] {
  const tails = columns.map((column, index) =>
    column.align === 'decimal' ? Math.max(0, ...rows.filter(isCells).map((row) => tailOf(row[index] ?? ''))) : 0,
  );
  return rows.map((row) =>
    isCells(row)
      ? row.map((cell, index) => (columns[index]?.align === 'decimal' ? withTail(cell, tails[index]!) : cell))
      : row,
  );
}

const number = /^[+−]?\d+([.,]\d+)?(?=$|\s)/;

/** Columns from the decimal sign on. */
function tailOf(cell: string): number {
  const found = number.exec(cell);
  return found === null ? 0 : screenWidth(cell) - screenWidth(found[0]) + screenWidth(found[1] ?? '');
}

function withTail(cell: string, tail: number): string {
  return number.test(cell) ? cell + held.repeat(tail - tailOf(cell)) : cell;
}

function widthsOf(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): readonly number[] {
  const cellsOf = (index: number) => [columns[index]!.head, ...rows.map((row) => row[index] ?? '')];
  const natural = columns.map((_, index) =>
    Math.max(1, ...cellsOf(index).flatMap((cell) => cell.split('\n').map(screenWidth))),
  );
  const least = columns.map((_, index) => Math.max(1, ...cellsOf(index).map(narrowest)));
  const widths = [...natural];
  const total = () => widths.reduce((sum, each) => sum + each, 0) + gap.length * (columns.length - 1);
  const narrow = (floor: (index: number) => number): boolean => {
    const widest = widths.reduce(
      (best, each, index) => (each > floor(index) && (best === undefined || each > widths[best]!) ? index : best),
      undefined as number | undefined,
    );
    if (widest === undefined) return false;
    widths[widest]! -= 1;
    return true;
  };
  while (total() > width) {
    // Words are broken only where even the joints are not enough.
    if (!narrow((index) => least[index]!) && !narrow(() => 1)) break;
  }
  return widths;
}

function rowLines(
  columns: readonly Column[],
  cells: readonly string[],
  widths: readonly number[],
  indent: string,
): readonly string[] {
  const broken = widths.map((width, index) => wrapped(cells[index] ?? '', width));
  const height = Math.max(...broken.map((lines) => lines.length));
  return Array.from({ length: height }, (_, row) =>
    (
      indent +
      broken
        .map((lines, index) => {
          const left = (columns[index]?.align ?? 'left') === 'left';
          return padded(lines[row] ?? '', widths[index]!, left ? 'left' : 'right');
        })
        .join(gap)
    )
      .replaceAll(held, ' ')
      .trimEnd(),
  );
}
