import { type Cell, type DocumentRecord, headText, tablesOf } from '@soundpost/documents/document-set';
import { type CellValue, writeXlsx } from 'hucre/xlsx';

/** The only place that knows the writer of workbooks: another one would be exchanged here. */

/** Over the hidden column that carries what was exported. */
export const exportedHead = 'As exported';

/** Most characters of the name of a tab. */
const longestTab = 31;

/**
 * Every table of a document as a workbook: numbers as numbers, units in the head or in a column of their own, the head
 * and the first column in sight while one scrolls. The last tab says of which issue it is. Nothing where the document
 * has no table.
 */
export async function workbook(
  record: DocumentRecord,
  { carriesExported = false }: { readonly carriesExported?: boolean } = {},
): Promise<Uint8Array | undefined> {
  const tables = tablesOf(record);
  if (tables.length === 0) return undefined;
  const taken = new Set<string>();
  const sheets = tables.map(({ name, columns, rows }) => {
    const head = columns.flatMap((column) =>
      column.kind === 'measure' ? [column.head, `${column.head}, unit`] : [headText(column)],
    );
    const values = rows.map((row) =>
      row.flatMap((cell, at) =>
        columns[at]!.kind === 'measure' ? [typedValue(cell), unitOf(cell)] : [typedValue(cell)],
      ),
    );
    const columnsSeen = head.map((text, at) => ({ width: widthOf([text, ...values.map((row) => row[at] ?? '')]) }));
    return {
      name: tabName(name, taken),
      rows: carriesExported
        ? [[...head, exportedHead], ...values.map((row) => [...row, JSON.stringify(row)])]
        : [head, ...values],
      columns: carriesExported ? [...columnsSeen, { width: 8, hidden: true }] : columnsSeen,
      cells: new Map(head.map((value, at) => [`0,${at}`, { value, style: { font: { bold: true } } }])),
      freezePane: { rows: 1, columns: 1 },
    };
  });
  return writeXlsx({
    sheets: [...sheets, { name: tabName('Issue', taken), rows: issueRows(record) }],
    properties: { title: record.title, created: revisionDate(record), modified: revisionDate(record) },
  });
}

function issueRows({ title, issue }: DocumentRecord): CellValue[][] {
  return [
    ['Document', title],
    ['Plant', issue.plant],
    ['Owner', issue.owner],
    ['Project', issue.project],
    ['Revision', issue.revision],
    ['Date', issue.date],
    ['Prepared by', issue.preparedBy],
    ['Content hash', issue.contentHash],
    ...(issue.preliminary === undefined ? [] : [['Preliminary', issue.preliminary]]),
  ];
}

function typedValue(cell: Cell): CellValue {
  switch (cell.is) {
    case 'text':
      return cell.text;
    case 'number':
    case 'measure':
      return cell.value;
    case 'unknown':
      return 'unknown';
    default:
      return null;
  }
}

function unitOf(cell: Cell): CellValue {
  return cell.is === 'measure' ? cell.unit : null;
}

/** A name a workbook takes for a tab, each once. */
function tabName(name: string, taken: Set<string>): string {
  const plain = name.replace(/[[\]:*?/\\']/g, '-').slice(0, longestTab) || 'Table';
  let found = plain;
  for (let at = 2; taken.has(found.toLowerCase()); at++) found = `${plain.slice(0, longestTab - 4)} ${at}`;
  taken.add(found.toLowerCase());
  return found;
}

function widthOf(column: readonly CellValue[]): number {
  return Math.min(48, Math.max(8, ...column.map((each) => String(each ?? '').length + 2)));
}

/** A file says when it was made; ours says the date of its revision, so that its bytes do not hang on a clock. */
function revisionDate({ issue }: DocumentRecord): Date {
  const stated = Date.parse(`${issue.date}T00:00:00Z`);
  return new Date(Number.isNaN(stated) ? 0 : stated);
}
