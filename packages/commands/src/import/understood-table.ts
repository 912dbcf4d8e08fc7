import { type Design, type DesignedPoint, nearest } from '@soundpost/core';
import type { SetTable } from '@soundpost/documents/document-set';
import { type Edit, yamlAt } from '@soundpost/files';
import type { BookCell } from '@soundpost/typesetting/read-workbook';
import { type CellWriting, saysTheSame, yamlOf } from './cell-yaml.ts';
import { cellName, type EditedRow, type EditedTable } from './edited-table.ts';
import { alike, cellTextOf, type FlatColumn, flatColumns, flatHeads, joined } from './flat-table.ts';
import { mangledBySpreadsheet } from './mangled-cell.ts';
import type { RoundTrip } from './round-trip-places.ts';

/** What became of one edited cell. A cell nobody edited is not told of. */
export interface UnderstoodCell {
  /** `F7`. */
  readonly cell: string;
  readonly column: string;
  /** Name of the row: its tag, and the level or cable. */
  readonly of: string;
  readonly path?: Edit['path'];
  readonly exported?: string;
  readonly now?: string;
  readonly edited: string;
  readonly is: 'change' | 'as the plant has it' | 'conflict' | 'refused';
  readonly words?: string;
  /** Of a change; of a conflict what a person may still decide for. */
  readonly edit?: Edit;
}

export interface UnderstoodTable {
  readonly kind: string;
  /** Whether the file carries what was exported; without it, it is compared with the plant as it is now. */
  readonly carriesExported: boolean;
  readonly cells: readonly UnderstoodCell[];
  /** Rows of the plant that the file does not have; nothing is taken out of the plant for that. */
  readonly rowsMissing: readonly string[];
  /** Heads the table does not have, and columns with something in them that have no head. */
  readonly headsUnknown: readonly string[];
  /** Heads of the table that the file does not have; what they say stays as it is. */
  readonly headsMissing: readonly string[];
}

export interface Understanding extends CellWriting {
  readonly roundTrip: RoundTrip;
  /** The same table of the plant as it is now. */
  readonly now: SetTable;
  readonly text: string;
  readonly exported?: SetTable;
}

/** What a table says of the plant, cell by cell, by comparing what was exported, what is edited and what stands now. */
export function understoodTable(table: EditedTable, understanding: Understanding): UnderstoodTable {
  const { now, roundTrip } = understanding;
  const columns = flatColumns(now, table.head);
  const nowRows = namedRows(now, roundTrip);
  const exportedRows = understanding.exported === undefined ? undefined : namedRows(understanding.exported, roundTrip);
  const seen = new Map<string, string>();
  const met = new Set<string>();
  const cells = table.rows.flatMap((row, index): readonly UnderstoodCell[] => {
    if (row.cells.every((cell) => cell.text === '')) return [];
    const names = roundTrip.names.map((name) => row.cells[table.head.indexOf(name)]?.text ?? '');
    const of = names.join(', ');
    const line = table.headRow + 1 + index;
    const refusedRow = (words: string): UnderstoodCell[] => [
      { cell: cellName(line, 0), column: roundTrip.names[0]!, of, edited: of, is: 'refused', words },
    ];
    const base = baseOf(row, now, exportedRows?.get(of));
    const ownNames = base === undefined ? names : roundTrip.names.map((name) => base.get(name) ?? '');
    if (row.exported !== undefined && ownNames.join(', ') !== of) {
      return refusedRow(`It was exported as '${ownNames.join(', ')}'. What names a row is not changed in a table.`);
    }
    const standing = nowRows.get(of);
    if (standing === undefined) {
      const near = nearest(of, [...nowRows.keys()]);
      return refusedRow(
        `The plant has no such row; a table makes none.${near === undefined ? '' : ` Did you mean '${near}'?`}`,
      );
    }
    if (met.has(of)) return refusedRow('A row above speaks of the same. Which one holds?');
    met.add(of);
    return columns.flatMap((column) => {
      const found = understoodCell(column, row, { line, of, names }, standing, base, understanding);
      if (found === undefined) return [];
      const place = JSON.stringify(found.path);
      if (found.edit === undefined) return [found];
      const other = seen.get(place);
      if (other !== undefined && other !== found.edit.yaml) {
        return [
          {
            ...without(found),
            is: 'refused' as const,
            words: 'A row above says otherwise of the same place. Which one holds?',
          },
        ];
      }
      seen.set(place, found.edit.yaml ?? '');
      return [found];
    });
  });
  const known = flatHeads(now);
  return {
    kind: roundTrip.kind,
    carriesExported: exportedRows !== undefined || table.rows.some((row) => row.exported !== undefined),
    cells,
    rowsMissing: [...nowRows.keys()].filter((each) => !met.has(each)),
    headsUnknown: [...table.head.filter((head) => head !== '' && !known.includes(head)), ...headless(table)],
    headsMissing: known.filter((head) => !table.head.includes(head)),
  };
}

function without({ edit, ...told }: UnderstoodCell): UnderstoodCell {
  return told;
}

/** Columns in which somebody wrote below no head. */
function headless({ head, rows }: EditedTable): readonly string[] {
  const widest = Math.max(head.length, ...rows.map((row) => row.cells.length));
  return Array.from({ length: widest }, (_, at) => at)
    .filter((at) => (head[at] ?? '') === '' && rows.some((row) => (row.cells[at]?.text ?? '') !== ''))
    .map((at) => `column ${cellName(1, at).slice(0, -1)}, which has no head`);
}

type RowTexts = ReadonlyMap<string, string>;

function understoodCell(
  column: FlatColumn,
  row: EditedRow,
  { line, of, names }: { readonly line: number; readonly of: string; readonly names: readonly string[] },
  standing: RowTexts,
  base: RowTexts | undefined,
  understanding: Understanding,
): UnderstoodCell | undefined {
  const parts = column.at.map((at): BookCell => row.cells[at] ?? { text: '', number: false });
  const edited = joined(parts.map((each) => each.text));
  const pointed = joined(parts.map((each) => (each.number ? each.text : withPoint(each.text, understanding.read))));
  const was = base?.get(column.head) ?? standing.get(column.head) ?? '';
  const now = standing.get(column.head) ?? '';
  const bad = parts.find((each) => each.refused !== undefined);
  if (bad === undefined && pointed === was) return undefined;
  const told = { cell: cellName(line, column.at[0]!), column: column.head, of, edited, exported: was, now };
  const refused = (words: string): UnderstoodCell => ({ ...told, is: 'refused', words });
  if (bad !== undefined) return refused(bad.refused!);
  const { designed, path } = pointCalled(understanding.design, understanding.roundTrip.pointOf(names[0]!))!;
  const place = understanding.roundTrip.place(column.head, designed, names, path);
  const isText = place.is === 'part' || (place.is === 'stated' && !place.quantity);
  if (!isText && alike(pointed, was)) return undefined;
  if (place.is === 'derived') return refused(place.words);
  const mangled = mangledBySpreadsheet(pointed, was, isText);
  if (mangled !== undefined) return { ...told, path: place.path, is: 'refused', words: mangled };
  if (edited === '')
    return refused("Nothing is taken out of the plant by an empty cell. Write 'unknown' where it is not known.");
  if (isText ? pointed === now : alike(pointed, now)) return { ...told, path: place.path, is: 'as the plant has it' };
  const yaml = yamlOf(place, edited, column, parts[0]!.number, understanding);
  if ('refused' in yaml) return { ...told, path: place.path, is: 'refused', words: yaml.refused };
  const before = yamlAt(understanding.text, place.path);
  if (saysTheSame(before, yaml.text, place, understanding.file)) {
    return { ...told, path: place.path, is: 'as the plant has it' };
  }
  const conflicts = isText ? now !== was : !alike(now, was);
  const words = [
    ...(conflicts ? ['The plant has changed here since the export.'] : []),
    ...(place.is === 'stated' && place.reaches !== undefined ? [place.reaches] : []),
    ...(before !== undefined && /\b(?:status|source):/.test(before)
      ? ['What is stated of where the old value came from goes with it; state it anew.']
      : []),
  ];
  return {
    ...told,
    path: place.path,
    is: conflicts ? 'conflict' : 'change',
    edit: { path: place.path, yaml: yaml.text },
    ...(words.length === 0 ? {} : { words: words.join(' ') }),
  };
}

/** A spreadsheet that writes decimal commas writes them in every number, also in those nobody edited. */
function withPoint(text: string, read: CellWriting['read']): string {
  return read === 'comma' ? text.replace(/^([+-]?\d+),(\d+(?:e[+-]?\d+)?)$/i, '$1.$2') : text;
}

/** The point a row names, and where it stands in the plant file. */
function pointCalled(design: Design, of: string): { designed: DesignedPoint; path: Edit['path'] } | undefined {
  for (const machine of design.machines) {
    const designed = machine.points.find((each) => each.point.of === of);
    if (designed !== undefined) {
      return { designed, path: ['machines', machine.stated.name, 'points', designed.stated.statement.name] };
    }
  }
  return undefined;
}

/** What was exported in a row: as the file carries it, or as the issue had it that it was exported from. */
function baseOf(row: EditedRow, now: SetTable, issued: RowTexts | undefined): RowTexts | undefined {
  if (row.exported === undefined) return issued;
  return new Map(
    flatColumns(now, flatHeads(now)).map(({ head, at }) => [head, joined(at.map((each) => row.exported![each] ?? ''))]),
  );
}

function namedRows(table: SetTable, { names }: RoundTrip): ReadonlyMap<string, RowTexts> {
  return new Map(
    table.rows.map((row) => {
      const texts = new Map(table.columns.map((column, at) => [column.head, cellTextOf(row[at]!)]));
      return [names.map((name) => texts.get(name) ?? '').join(', '), texts];
    }),
  );
}
