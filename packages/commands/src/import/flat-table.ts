import type { SetTable } from '@soundpost/documents/document-set';

/** Where a column of the table stands among the columns of a file; a measure takes two. */
export interface FlatColumn {
  readonly head: string;
  readonly unit: string | undefined;
  readonly at: readonly number[];
}

export function cellTextOf(cell: SetTable['rows'][number][number]): string {
  switch (cell.is) {
    case 'text':
      return cell.text.replace(/[\p{Zs}\t]+/gu, ' ').trim();
    case 'number':
      return String(cell.value);
    case 'measure':
      return joined([String(cell.value), cell.unit]);
    case 'unknown':
      return 'unknown';
    default:
      return '';
  }
}

/** The heads of a table as its files have them. */
export function flatHeads({ columns }: SetTable): readonly string[] {
  return columns.flatMap(({ head, kind, unit }) =>
    kind === 'measure' ? [head, `${head}, unit`] : [unit === undefined || unit === '' ? head : `${head}, ${unit}`],
  );
}

export function flatColumns(table: SetTable, head: readonly string[]): readonly FlatColumn[] {
  return table.columns.flatMap((column): readonly FlatColumn[] => {
    const heads = flatHeads({ ...table, columns: [column] });
    const at = heads.map((each) => head.indexOf(each));
    if (at.some((each) => each < 0)) return [];
    return [{ head: column.head, unit: column.kind === 'number' && column.unit !== '' ? column.unit : undefined, at }];
  });
}

export function joined(parts: readonly string[]): string {
  return parts.filter((each) => each !== '').join(' ');
}

/** The same text; or the same number, as far as a spreadsheet keeps its digits. */
export function alike(one: string, other: string): boolean {
  if (one === other) return true;
  const split = (text: string) => /^([+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?)(.*)$/i.exec(text);
  const [a, b] = [split(one), split(other)];
  if (a === null || b === null || a[2] !== b[2]) return false;
  return Math.abs(Number(a[1]) - Number(b[1])) <= 1e-12 * Math.abs(Number(b[1]));
}
