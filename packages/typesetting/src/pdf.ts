import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { Broken } from '@soundpost/core';
import { type Block, cut, type DocumentRecord, inert, standaloneSvg } from '@soundpost/documents/document-set';
import { covered } from './coverage.ts';
import { shippedFonts } from './fonts.ts';
import { template } from './template.ts';

/** The papers a document may be set on. */
export const papers = ['a4', 'a3', 'letter'] as const;
export type Paper = (typeof papers)[number];

const typstPaper: Readonly<Record<Paper, string>> = { a4: 'a4', a3: 'a3', letter: 'us-letter' };

/** Longer than any sentence of ours; a longer text of a plant is cut, and says so. */
const longestText = 1200;

/** A drawing wider than this, in its own units, is set across the page. */
const wideFrom = 500;

/** Longest run of signs without a place to break at that any column has room for. */
const unbroken = /[^\s\-/]{24}/gu;

/** Of a record: what is read by programs and what is no text of ours; all else is set. */
const notSet: ReadonlySet<string> = new Set(['svg', 'description', 'documentTitle', 'kind', 'is']);

let compiler: NodeCompiler | undefined;

/**
 * A document as PDF/A-2b: the same bytes for the same record. The date in the file is that of the revision; where none
 * is stated, the file carries none but the one its standard demands, which is then the first of 1970.
 *
 * Laid out and written in one call: a laid-out document handed to us would stay until the garbage collector came, which
 * does not know how large it is.
 */
export function pdf(record: DocumentRecord, paper: Paper = 'a4'): Uint8Array {
  const { blobs, signs } = shippedFonts();
  compiler ??= NodeCompiler.create({ fontArgs: [{ fontBlobs: blobs }] });
  const { year, month, day } = dateOf(record.issue.date);
  const whole = {
    ...record,
    documentTitle: `${record.title}: ${record.issue.plant}`,
    year,
    month,
    day,
    sheets: record.sheets.map(withPictures),
  };
  const asked = {
    mainFileContent: template,
    inputs: {
      paper: typstPaper[paper],
      record: JSON.stringify(whole, (key, value: unknown) =>
        typeof value === 'string' ? settable(key, value, signs) : value,
      ),
    },
  };
  try {
    return compiler.pdf(asked, {
      pdfStandard: 'a-2b',
      creationTimestamp: Date.UTC(year === 0 ? 1970 : year, month - 1, day) / 1000,
    });
  } catch (error) {
    throw new Broken('a document record can be typeset', {
      kind: record.kind,
      faults: JSON.stringify(compiler.compile(asked).takeDiagnostics()?.shortDiagnostics ?? [String(error)]),
    });
  } finally {
    compiler.evictCache(0);
  }
}

/** A text as it can be set: cut, harmless, in signs the fonts have, and with places to break at where it has none. */
function settable(key: string, text: string, signs: ReadonlySet<number>): string {
  if (key === 'svg') return covered(text, signs);
  const seen = covered(inert(cut(text, longestText)), signs);
  return notSet.has(key) ? seen : seen.replace(unbroken, '$&\u200b');
}

function withPictures(sheet: DocumentRecord['sheets'][number]): object {
  return { title: sheet.title, blocks: sheet.blocks.map(withPicture) };
}

function withPicture(block: Block): object {
  if (block.is !== 'drawing') return block;
  const { drawing, caption } = block;
  return {
    is: 'drawing',
    caption,
    svg: standaloneSvg(drawing),
    width: drawing.width,
    height: drawing.height,
    wide: drawing.width >= wideFrom,
    description: `${drawing.title}. ${drawing.description}`,
  };
}

/** `2026-11-25`; a year of zero where no date is stated. */
function dateOf(date: string): { readonly year: number; readonly month: number; readonly day: number } {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  if (year === undefined) return { year: 0, month: 1, day: 1 };
  return { year: Number(year), month: Number(month), day: Number(day) };
}
