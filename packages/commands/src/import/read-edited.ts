import { Refusal } from '@soundpost/core';
import { pastedCells, textFile } from '@soundpost/files';
import type { Surroundings } from '../surroundings.ts';
import { type EditedTable, plainHead, tableOfTexts } from './edited-table.ts';

const mostRows = 20_000;

/** The tables of a file a person edited: the tabs of a workbook, or one text. Throws Refusal in words. */
export async function readEdited(surroundings: Surroundings, path: string): Promise<readonly EditedTable[]> {
  const bytes = await surroundings.readBytes(path);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const { readWorkbook } = await import('@soundpost/typesetting');
    return (await readWorkbook(bytes)).map(({ name, rows, exported }) => ({
      name,
      head: (rows[0] ?? []).map((each) => plainHead(each.text)),
      headRow: 1,
      rows: rows.slice(1).map((cells, at) => ({ cells, exported: exported[at + 1] })),
    }));
  }
  const rows = pastedCells(textFile(bytes, path).text);
  if (rows.length > mostRows) throw new Refusal({ read: `${rows.length} rows`, expected: `at most ${mostRows}` });
  return [tableOfTexts(rows)];
}
