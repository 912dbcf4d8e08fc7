import { strToU8, type Zippable, zipSync } from 'fflate';
import { writeXlsx } from 'hucre/xlsx';
import { expect, test } from 'vitest';
import { readWorkbook } from './read-workbook.ts';
import { exampleRecords } from './testing/example-records.ts';
import { workbook } from './workbook.ts';

const sheetXml = (body: string) =>
  `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${body}</worksheet>`;

/** The least a workbook is made of (ECMA-376). */
function book(body: string, more: Zippable = {}): Uint8Array {
  const relations = 'http://schemas.openxmlformats.org/package/2006/relationships';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  return zipSync({
    '[Content_Types].xml': strToU8(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>',
    ),
    '_rels/.rels': strToU8(
      `<Relationships xmlns="${relations}"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': strToU8(
      `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${office}"><sheets><sheet name="T" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships xmlns="${relations}"><Relationship Id="r1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    'xl/worksheets/sheet1.xml': strToU8(sheetXml(body)),
    ...more,
  });
}

const text = (place: string, words: string) => `<c r="${place}" t="inlineStr"><is><t>${words}</t></is></c>`;

test('law: what is exported is read again, its hidden column as what was exported', async () => {
  const record = exampleRecords('raw-water-pump').records.find((each) => each.kind === 'cable-schedule')!;
  const [plain] = await readWorkbook((await workbook(record))!);
  const [carrying] = await readWorkbook((await workbook(record, { carriesExported: true }))!);
  expect(carrying!.rows.map((row) => row.map((cell) => cell.text))).toEqual(
    plain!.rows.map((row) => row.map((cell) => cell.text)),
  );
  expect(plain!.exported.every((each) => each === undefined)).toBe(true);
  for (const [at, row] of carrying!.rows.entries()) {
    if (at > 0) expect(carrying!.exported[at]).toEqual(row.map((cell) => cell.text));
  }
});

test('negative: a formula, a merged cell and a truth value are read with why nothing is taken from them', async () => {
  const body = `<sheetData><row r="1">${text('A1', 'Tag')}${text('B1', 'x')}</row><row r="2"><c r="A2"><f>1+1</f><v>2</v></c><c r="B2" t="b"><v>1</v></c></row><row r="3">${text('A3', 'm')}</row></sheetData><mergeCells count="1"><mergeCell ref="A3:B3"/></mergeCells>`;
  const [sheet] = await readWorkbook(book(body));
  expect(sheet!.rows[1]![0]!.refused).toContain('formula');
  expect(sheet!.rows[1]![1]!.refused).toContain('true or false');
  expect(sheet!.rows[2]![0]!.refused).toContain('merged');
  expect(sheet!.rows[0]![0]!.refused).toBeUndefined();
});

test('negative: a workbook that unpacks to more than is allowed is refused, whatever it says of itself', async () => {
  const bomb = book('<sheetData/>', { 'xl/media/big.bin': new Uint8Array(80 * 1024 * 1024) });
  await expect(readWorkbook(bomb)).rejects.toThrow('64 MiB');
  const lying = new Uint8Array(bomb);
  const view = new DataView(lying.buffer);
  for (let at = 0; at < lying.length - 46; at++) {
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
  }
  await expect(readWorkbook(lying)).rejects.toThrow('64 MiB');
});

test('negative: an archive of too many parts is refused before any is read', async () => {
  const parts = Object.fromEntries(Array.from({ length: 600 }, (_, at) => [`x/${at}.xml`, strToU8('x')]));
  await expect(readWorkbook(book('<sheetData/>', parts))).rejects.toThrow('500 parts');
});

test('negative: a cell at the far corner does not cost its rectangle, and a wide tab is refused', async () => {
  const far = `<sheetData><row r="1">${text('A1', 'Tag')}</row><row r="1048576">${text('XFD1048576', 'x')}</row></sheetData>`;
  await readWorkbook(book(far)).then(
    (sheets) => expect(sheets[0]!.rows.length).toBeLessThan(20_001),
    (error: Error) => expect(error.message).toMatch(/expected/),
  );
  const wide = `<sheetData><row r="1">${text('A1', 'Tag')}${text('ZZ1', 'x')}</row></sheetData>`;
  await expect(readWorkbook(book(wide))).rejects.toThrow('200 columns');
});

test('law: a workbook cut off anywhere, or with a byte changed, is read or refused, and nothing else', async () => {
  const whole = await writeXlsx({
    sheets: [
      {
        name: 'T',
        rows: [
          ['Tag', 'x'],
          ['a', 1],
        ],
      },
    ],
  });
  for (let at = 0; at < whole.length; at += 37) {
    const cut = whole.slice(0, at);
    const bent = whole.slice();
    bent[at] = bent[at]! ^ 0xff;
    await expect(readWorkbook(cut)).rejects.toMatchObject({ name: 'Refusal' });
    await readWorkbook(bent).catch((error: Error) => expect(error.name).toBe('Refusal'));
  }
});
