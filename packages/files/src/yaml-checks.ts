import type { RefusalReason } from '@soundpost/core';
import type { Refusals } from './file-refusal.ts';
import { placeAt, type TextFile } from './text-file.ts';
import { type Lexeme, lexemesOf } from './yaml-lexemes.ts';
import { forbiddenLexeme } from './yaml-reasons.ts';

/** Bounds of what is read: beyond each the file is refused, so that no file takes the memory or the day. */
export const deepest = 40;
export const mostValues = 500_000;
export const mostLines = 500_000;
export const longestScalar = 20_000;

/** Lexemes that mean something; `- a` and `a: b` bring two and three to a value or two. */
const mostLexemes = 2 * mostValues;

export const tooMany: RefusalReason = {
  read: 'a file of too many values',
  expected: `at most ${mostValues} values in one file`,
  suggestion: 'Divide it, or keep bulk data in a table.',
};

/** A quoted text over several lines: where a later error comes from, if its closing quote was forgotten. */
export interface LongQuote {
  readonly offset: number;
  readonly end: number;
}

/** One pass over the lexemes refuses what no plant file needs, before anything is built from it. */
export function checkLexemes(text: TextFile, refusals: Refusals): readonly LongQuote[] {
  const quotes: LongQuote[] = [];
  if (text.lineStarts.length > mostLines) {
    refusals.stop(placeAt(text, text.lineStarts[mostLines]!), {
      read: `a file of ${text.lineStarts.length} lines`,
      expected: `at most ${mostLines} lines in one file`,
      suggestion: 'Divide it, or keep bulk data in a table.',
    });
  }
  let begun = false;
  let documents = 0;
  let meaning = 0;
  let values = 0;
  for (const lexeme of lexemesOf(text.text)) {
    const { type, source, offset } = lexeme;
    if (type === 'space' || type === 'newline' || type === 'comment') continue;
    const reason = forbiddenLexeme(type, source);
    if (reason !== undefined) refusals.stop(placeAt(text, offset), reason);
    if (type === 'doc-mode') documents++;
    if (documents > 1 || (type === 'doc-start' && begun)) {
      refusals.stop(placeAt(text, offset), {
        read: 'a second document',
        expected: 'one document in a file',
        suggestion: "Keep each in a file of its own; a line of '---' begins a new document.",
      });
    }
    if (type !== 'doc-mode') begun = true;
    if (type === 'value' || type.startsWith('flow-') || type.endsWith('quoted-scalar')) values++;
    if (++meaning > mostLexemes || values > mostValues) refusals.stop(placeAt(text, offset), tooMany);
    checkScalar(lexeme, text, refusals);
    if (type.endsWith('quoted-scalar') && source.includes('\n')) quotes.push({ offset, end: offset + source.length });
  }
  return quotes;
}

function checkScalar({ type, source, offset }: Lexeme, text: TextFile, refusals: Refusals): void {
  const quoted = type.endsWith('quoted-scalar');
  if (quoted && !isClosed(source)) {
    const end = source.indexOf('\n');
    refusals.stop(placeAt(text, offset), {
      read: end < 0 ? source : source.slice(0, end),
      expected: `a closing ${source[0]} to this text`,
      suggestion: 'Close the quotes; a text of several lines begins with | on the line above.',
    });
  }
  if ((quoted || type === 'value') && source.length > longestScalar) {
    refusals.stop(placeAt(text, offset), {
      read: source.slice(0, 60),
      expected: `a text of at most ${longestScalar} characters`,
      suggestion: `It has ${source.length}.`,
    });
  }
}

/** Whether a quoted lexeme ends with its own closing quote. Looks at the tail only. */
function isClosed(source: string): boolean {
  const quote = source[0]!;
  const mark = quote === '"' ? '\\' : "'";
  if (source.length < 2 || !source.endsWith(quote)) return false;
  let before = source.length - 2;
  while (before > 0 && source[before] === mark) before--;
  return (source.length - 2 - before) % 2 === 0;
}
