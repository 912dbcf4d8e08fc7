import { expect, test } from 'vitest';
import { type WorkbookParts, workbookOfParts, workbookParts } from '../../../typesetting/src/testing/workbook-parts.ts';
import { csvPath, imported, issued, read, typed, workbookOf } from '../testing/edited-table.ts';
import { flowing, pump, pumpPath } from '../testing/house.ts';

type World = Awaited<ReturnType<typeof issued>>;
type Parts = WorkbookParts;
const bytesOf = (text: string) => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const firstTab = 'xl/worksheets/sheet1.xml';
const loop = 'P-301/pump-drive-end-loop';

/** The exported cable schedule with its parts changed as an attacker would, handed in. */
async function handedIn(change: (parts: Parts) => void) {
  const surroundings = await issued();
  const parts = workbookParts(surroundings.files.get(workbookOf('cable-schedule'))!);
  change(parts);
  surroundings.files.set('edited.xlsx', workbookOfParts(parts));
  return { surroundings, ...(await imported(surroundings, 'edited.xlsx', { apply: true })) };
}

async function handedText(name: string, bytes: Uint8Array) {
  const surroundings = await issued();
  surroundings.files.set(name, bytes);
  return { surroundings, ...(await imported(surroundings, name, { apply: true })) };
}

function untouched(surroundings: World): void {
  expect(read(surroundings, pumpPath)).toBe(pump());
}

const bent = (parts: Parts, path: string, change: (xml: string) => string): void => {
  const before = textOf(parts[path]!);
  const after = change(before);
  expect(after).not.toBe(before);
  parts[path] = bytesOf(after);
};

test('negative: a workbook that unpacks without end is refused in words', async () => {
  const { outcome, surroundings } = await handedIn((parts) => {
    parts['xl/media/big.bin'] = new Uint8Array(80 * 1024 * 1024);
  });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain('64 MiB');
  untouched(surroundings);
});

test('negative: entities that name entities are not unfolded, nor one that names a file', async () => {
  const laughs = Array.from({ length: 9 }, (_, at) => `<!ENTITY l${at + 1} "${`&l${at};`.repeat(10)}">`).join('');
  const types = `<!DOCTYPE worksheet [<!ENTITY l0 "ha">${laughs}<!ENTITY f SYSTEM "file:///etc/passwd">]>`;
  for (const entity of ['&l9;', '&f;']) {
    const { outcome, surroundings } = await handedIn((parts) =>
      bent(parts, firstTab, (xml) =>
        xml
          .replace(/^(<\?xml[^>]*\?>)?/, (head) => `${head}${types}`)
          .replace(/<row r="3"[^>]*>/, (row) => `${row}<c r="F3" t="inlineStr"><is><t>${entity}</t></is></c>`),
      ),
    );
    const words = JSON.stringify(outcome);
    expect(words.length).toBeLessThan(100_000);
    expect(words).not.toContain('haha');
    expect(words).not.toContain('root:');
    untouched(surroundings);
  }
});

test('negative: links to other files and macros are carried by nobody: nothing is fetched, run or taken', async () => {
  const { json, outcome, surroundings } = await handedIn((parts) => {
    parts['xl/vbaProject.bin'] = bytesOf('Sub Auto_Open()');
    parts['xl/externalLinks/externalLink1.xml'] = bytesOf('<externalLink><ddeLink ddeService="cmd"/></externalLink>');
    parts['xl/externalLinks/_rels/externalLink1.xml.rels'] = bytesOf(
      '<Relationships><Relationship Id="r1" TargetMode="External" Target="http://127.0.0.1:9/x.xlsx"/></Relationships>',
    );
  });
  expect(outcome.exit).toBe(0);
  expect(json.cells).toEqual([]);
  expect(json.written).toBe(false);
  untouched(surroundings);
});

test('negative: a page that is named as a workbook is refused in words', async () => {
  const html = '<html><script>alert(1)</script><table><tr><td>Cable</td><td>Length, m</td></tr></table></html>';
  const { outcome, surroundings } = await handedText('edited.xlsx', bytesOf(html));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain('no table is known by its heads');
  untouched(surroundings);
});

test('negative: an archive that is no workbook is refused in words', async () => {
  const { outcome, surroundings } = await handedText('edited.xlsx', workbookOfParts({ 'a.txt': bytesOf('x') }));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toMatch(/workbook/);
  untouched(surroundings);
});

test('negative: a name of ten thousand characters is refused, and what is told of it stays short', async () => {
  const surroundings = await issued();
  const long = 'x'.repeat(10_000);
  const text = read(surroundings, csvPath('instrument-list')).replace(loop, long);
  surroundings.files.set('edited.csv', bytesOf(text));
  const { cells, outcome } = await imported(surroundings, 'edited.csv', { apply: true });
  expect(cells.map((each) => each.is)).toEqual(['refused']);
  expect(cells[0]!.words!.length).toBeLessThan(1000);
  expect(flowing(outcome).length).toBeLessThan(25_000);
  untouched(surroundings);
});

test.each([
  ['direction marks', 'cab\u202elb'],
  ['direction isolates', 'a\u2066b\u2069'],
  ['a character nobody sees', 'a\u200bb'],
  ['a control', 'a\u0007b'],
])('negative: %s in a cell are refused in words, never written', async (_, value) => {
  const surroundings = await issued();
  const text = read(surroundings, csvPath('instrument-list')).replace('"pump, drive-end bearing housing"', value);
  expect(text).toContain(value);
  surroundings.files.set('edited.csv', bytesOf(text));
  const csv = await imported(surroundings, 'edited.csv', { apply: true });
  expect(csv.outcome.exit).toBeGreaterThan(0);
  expect(flowing(csv.outcome)).toMatch(/U\+[0-9A-F]{4}/);
  untouched(surroundings);
  await typed(surroundings, 'instrument-list', { Location: value }, (names) => names.includes('loop'));
  const book = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(book.outcome.exit).toBeGreaterThan(0);
  expect(JSON.stringify(book.json)).toMatch(/U\+[0-9A-F]{4}|invisible character/);
  untouched(surroundings);
});

test('a script and a line of YAML in a cell are text, and stay one value', async () => {
  const surroundings = await issued();
  const value = '<script>alert(1)</script>: {injected: true} # no';
  await typed(surroundings, 'instrument-list', { Surface: value }, (names) => names.includes('loop'));
  const { cells } = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(cells.map((each) => each.is)).toEqual(['refused']);
  untouched(surroundings);
});

test('negative: a million rows are refused, of a text and of a workbook', async () => {
  const text = `Cable,From\n${'a,b\n'.repeat(1_000_000)}`;
  const told = await handedText('edited.csv', bytesOf(text));
  expect(told.outcome.exit).toBe(2);
  expect(flowing(told.outcome)).toMatch(/at most 20\W?000/);
  untouched(told.surroundings);
  const rows = Array.from({ length: 1_000_000 }, (_, at) => `<row r="${at + 1}"><c r="A${at + 1}"><v>1</v></c></row>`);
  const book = await handedIn((parts) =>
    bent(parts, firstTab, (xml) =>
      xml.replace(/<sheetData>.*<\/sheetData>/s, `<sheetData>${rows.join('')}</sheetData>`),
    ),
  );
  expect(book.outcome.exit).toBe(2);
  expect(flowing(book.outcome)).toMatch(/20000 rows|at most/);
  untouched(book.surroundings);
}, 60_000);
