import type { RefusalReason } from '@soundpost/core';
import { Composer, type Document } from 'yaml';
import { Refusals } from './file-refusal.ts';
import type { Placed } from './placed.ts';
import { placeAt, type TextFile } from './text-file.ts';
import { checkLexemes, deepest, type LongQuote } from './yaml-checks.ts';
import { syntaxOf } from './yaml-lexemes.ts';
import { Placing } from './yaml-placing.ts';
import { syntaxReason } from './yaml-reasons.ts';

const mostSyntaxErrors = 5;
/** Errors of the library, most of them echoes on one line; beyond this the rest is not worth its time. */
const mostEchoes = 200;

/**
 * Reads a text as one document of YAML 1.2 (core schema) and gives every part its place. Refused, each with its reason:
 * anchors, aliases and merge keys (before anything is expanded), tags, directives, explicit keys, several documents,
 * repeated keys, names reserved by the language, and what exceeds the bounds above. Throws UnreadableFile; with a
 * collection of refusals given, repeated and unfit keys are only noted there and reading goes on.
 */
export function placedYaml(text: TextFile, collected?: Refusals): Placed {
  const refusals = collected ?? new Refusals(text);
  const quotes = checkLexemes(text, refusals);
  const document = composed(text, refusals, quotes);
  const placed = new Placing(text, refusals).node(document.contents, '', 0);
  if (collected === undefined) refusals.throwIfAny();
  return placed;
}

function composed(text: TextFile, refusals: Refusals, quotes: readonly LongQuote[]): Document.Parsed {
  const noted = new Set<number>();
  let echoes = 0;
  const onError = (where: unknown, code: string, message: string, warning?: boolean): void => {
    if (warning === true) return;
    if (++echoes > mostEchoes) refusals.throwIfAny();
    const offset = Math.min(offsetOf(where), text.text.length);
    const place = placeAt(text, offset);
    if (noted.has(place.line)) return;
    noted.add(place.line);
    const forgotten = quotes.find((quote) => quote.offset < offset && placeAt(text, quote.end).line === place.line);
    const start = text.lineStarts[place.line - 1]!;
    const line = text.text.slice(start, text.lineStarts[place.line] ?? text.text.length).slice(0, 200);
    if (forgotten === undefined) refusals.add(place, syntaxReason(code, message, line.trim()));
    else refusals.add(placeAt(text, forgotten.offset), unclosedQuote(place.line));
    if (noted.size >= mostSyntaxErrors) refusals.throwIfAny();
  };
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, logLevel: 'silent' });
  // The composer would keep an object for every error of a hostile file; here the fifth line ends reading.
  Object.assign(composer, { onError });
  let document: Document.Parsed | undefined;
  for (const each of composer.compose(syntaxOf(text.text, depthCheck(text, refusals)), true, text.text.length)) {
    document ??= each;
  }
  for (const { pos, code, message } of document?.errors ?? []) onError(pos, code, message);
  if (noted.size > 0) refusals.throwIfAny();
  return document!;
}

function depthCheck(text: TextFile, refusals: Refusals) {
  return (depth: number, offset: number): void => {
    if (depth <= deepest) return;
    refusals.stop(placeAt(text, offset), {
      read: `${deepest + 1} levels, one inside another`,
      expected: `at most ${deepest} levels`,
    });
  };
}

function unclosedQuote(line: number): RefusalReason {
  return {
    read: `a quoted text that ends in line ${line}`,
    expected: 'nothing more in the line where it ends',
    suggestion: 'Was its closing quote forgotten?',
  };
}

function offsetOf(where: unknown): number {
  if (typeof where === 'number') return Math.max(0, where);
  if (Array.isArray(where)) return offsetOf(where[0]);
  return typeof where === 'object' && where !== null && 'offset' in where ? offsetOf(where.offset) : 0;
}
