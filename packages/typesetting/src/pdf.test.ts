import { type DocumentRecord, tablesOf } from '@soundpost/documents/document-set';
import { expect, test } from 'vitest';
import { noGlyph } from './coverage.ts';
import { pageCount } from './page-count.ts';
import { papers, pdf } from './pdf.ts';
import { exampleNames, exampleRecords } from './testing/example-records.ts';
import { closed, noPoppler, poppler } from './testing/poppler.ts';

const absent = noPoppler();
const examples = exampleNames.map((name) => ({ name, ...exampleRecords(name) }));
/** Each document is set once, however many tests read it. */
const set = new Map<DocumentRecord, Uint8Array>();
function bytesOf(record: DocumentRecord): Uint8Array {
  const bytes = set.get(record) ?? pdf(record);
  set.set(record, bytes);
  return bytes;
}
const pump = examples.find((each) => each.name === 'raw-water-pump')!;

const list = pump.records.find((each) => each.kind === 'instrument-list')!;

/** A test that needs the independent reader says why where it does not run. */
const readBack = test.skipIf(absent !== undefined);
if (absent !== undefined) process.stderr.write(`skipped: ${absent}\n`);

test('law: the same record gives the same bytes twice', () => {
  for (const record of pump.records.slice(0, 3)) {
    expect(Buffer.compare(Buffer.from(pdf(record)), Buffer.from(pdf(record)))).toBe(0);
  }
});

readBack.each(examples)('independent: $name as pdfinfo and pdftotext read it', ({ records }) => {
  for (const record of records) {
    const bytes = bytesOf(record);
    const facts = poppler('pdfinfo', bytes);
    expect(facts).toMatch(/PDF version:\s+1\.7/);
    expect(facts).toMatch(/A4/);
    expect(facts).toContain(`CreationDate:`);
    const pages = Number(/Pages:\s+(\d+)/.exec(facts)?.[1]);
    expect(pageCount(bytes)).toBe(pages);
    const text = poppler('pdftotext', bytes);
    expect(text.split(`of ${pages}`).length - 1).toBeGreaterThanOrEqual(pages);
    const read = closed(text);
    for (const sheet of record.sheets) expect(read).toContain(closed(sheet.title));
    expect(read).toContain(closed(`revision ${record.issue.revision}`));
    expect(read).toContain(record.issue.contentHash.slice(0, 16));
    // The conformance a file claims stands in its metadata, which the standard wants uncompressed.
    expect(Buffer.from(bytes).toString('latin1')).toMatch(/pdfaid:part>2<\/pdfaid:part><pdfaid:conformance>B/);
  }
});

readBack.each(examples)('independent: every cell of every table of $name can be read in its PDF', ({ records }) => {
  for (const record of records) {
    // A cell that runs over several lines stands between its neighbours there: its words are looked for one by one.
    const read = closed(poppler('pdftotext', bytesOf(record)));
    const missing = tablesOf(record)
      .flatMap(({ rows }) => rows.flat())
      .flatMap((cell) => (cell.is === 'text' ? cell.text.split(/[\s/-]+/) : 'shown' in cell ? [cell.shown] : []))
      .filter((word) => word !== '' && word.length < 20 && !read.includes(closed(word)));
    expect([...new Set(missing)]).toEqual([]);
  }
});

readBack('law: nothing but the shipped fonts is set', () => {
  for (const { records } of examples) {
    for (const record of records) {
      const fonts = poppler('pdffonts', bytesOf(record))
        .split('\n')
        .slice(2)
        .filter((line) => line.trim() !== '');
      expect(fonts.filter((line) => !/^[A-Z]{6}\+Inter/.test(line))).toEqual([]);
    }
  }
});

/** The same document with another text in every place a plant file fills. */
function renamed(record: DocumentRecord, name: string): DocumentRecord {
  const issue = { ...record.issue, plant: name, owner: name, project: name, revision: name };
  return {
    ...record,
    issue,
    sheets: record.sheets.map((sheet) => ({
      title: name,
      blocks: sheet.blocks.map((block) =>
        block.is === 'table'
          ? {
              ...block,
              caption: name,
              rows: block.rows.map((row) => row.map((cell) => (cell.is === 'text' ? { ...cell, text: name } : cell))),
            }
          : block,
      ),
    })),
  };
}

const attacks: readonly (readonly [string, string])[] = [
  ['markup of the typesetter', '#panic("out") *bold* _x_ $x^2$ @ref <label> = Title #read("/etc/passwd")'],
  ['brackets and quotes', '"]) } { [ ( \\" \\u{41} `raw` // comment /* x */'],
  ['signs no shipped font has', '\u{1F980} 漢字 עברית \uFDFA'],
  ['signs that act', '\u202E\u2066evil\u0000\u001b[31m\u2028'],
  ['one word of 4 kB', 'W'.repeat(4096)],
];

readBack.each(attacks)('negative: a plant named with %s is a plant with an odd name', (_, name) => {
  const text = poppler('pdftotext', pdf(renamed(list, name)));
  expect(closed(text)).toContain(closed([...name].slice(0, 12).join('')).replace(/[^\x20-\x7e].*/u, ''));
  expect(text).not.toContain('root:');
});

readBack('a sign the fonts lack stands as an empty box', () => {
  expect(poppler('pdftotext', pdf(renamed(list, 'Pump \u{1F980}')))).toContain(`Pump ${noGlyph}`);
});

readBack.each(papers)('a document can be set on %s', (paper) => {
  const size = { a4: 'A4', a3: 'A3', letter: 'letter' }[paper];
  expect(poppler('pdfinfo', pdf(list, paper))).toContain(`(${size})`);
});
