import { Refusal } from '@soundpost/core';
import { pastedCells, textFile } from '@soundpost/files';
import { type EditedTable, plainHead, tableOfTexts } from './edited-table.ts';

const mostRows = 20_000;

/** Which issue a workbook was exported in, as its last tab says. */
export interface ExportedIn {
  readonly revision: string;
  readonly contentHash: string;
}

export interface EditedFile {
  readonly tables: readonly EditedTable[];
  readonly exportedIn?: ExportedIn;
}

/** The tables of a file a person edited: the tabs of a workbook, or one text. Throws Refusal in words. */
export async function readEdited(bytes: Uint8Array, path: string): Promise<EditedFile> {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const { readWorkbook } = await import('@soundpost/typesetting/read-workbook');
    const sheets = await readWorkbook(bytes);
    const said = (term: string) =>
      sheets
        .at(-1)
        ?.rows.find((row) => row[0]?.text === term)?.[1]
        ?.text.slice(0, 80);
    const [revision, contentHash] = [said('Revision'), said('Content hash')];
    return {
      tables: sheets.map(({ name, rows, exported }) => ({
        name,
        head: (rows[0] ?? []).map((each) => plainHead(each.text)),
        headRow: 1,
        rows: rows.slice(1).map((cells, at) => ({ cells, exported: exported[at + 1] })),
      })),
      ...(revision === undefined || contentHash === undefined ? {} : { exportedIn: { revision, contentHash } }),
    };
  }
  const rows = pastedCells(textFile(bytes, path).text);
  if (rows.length > mostRows) throw new Refusal({ read: `${rows.length} rows`, expected: `at most ${mostRows}` });
  return { tables: [tableOfTexts(rows)] };
}
