import { Refusal, type RefusalReason, refusalSentence, shortened } from '@soundpost/core';
import type { Place } from './placed.ts';
import type { TextFile } from './text-file.ts';

/** One thing in a file that cannot be read: where, what stands there, what was expected, what was probably meant. */
export interface FileRefusal extends Place, RefusalReason {
  readonly file: string;
  /** The line of the file, cut to a width that can be shown, and how many characters stand before the place in it. */
  readonly excerpt?: { readonly text: string; readonly before: number };
}

/** Everything found wrong with one file in one pass. */
export class UnreadableFile extends Refusal {
  readonly file: string;
  readonly refusals: readonly FileRefusal[];

  /** `stopped`: reading ended at the limit of refusals, and the rest of the file was not looked at. */
  constructor(refusals: readonly [FileRefusal, ...FileRefusal[]], stopped = false) {
    super(refusals[0]);
    this.name = 'UnreadableFile';
    this.file = refusals[0].file;
    this.refusals = refusals;
    const rest = stopped ? [`Reading stopped after ${refusals.length} refusals; there may be more.`] : [];
    this.message = [...refusals.map(showRefusal), ...rest].join('\n\n');
  }
}

/** `plant.yaml:12:5: machines/P-301: read '…', expected …`, and below it the line with a caret under the place. */
export function showRefusal(refusal: FileRefusal): string {
  const path = refusal.path === '' ? '' : `${shortened(refusal.path, 160)}: `;
  const head = `${refusal.file}:${refusal.line}:${refusal.column}: ${path}${refusalSentence(refusal)}`;
  if (refusal.excerpt === undefined) return head;
  const margin = `${String(refusal.line).padStart(5)} | `;
  return `${head}\n${margin}${refusal.excerpt.text}\n${' '.repeat(margin.length + refusal.excerpt.before)}^`;
}

const mostRefusals = 50;
const longestRead = 200;

/** Collects what is wrong with one file, up to fifty, so that the writer mends it in one go. */
export class Refusals {
  readonly #text: TextFile;
  readonly #found: FileRefusal[] = [];
  /** Places whose one refusal tells all: what is refused there later is an echo of it. */
  readonly #explained = new Set<string>();

  constructor(text: TextFile) {
    this.#text = text;
  }

  /** Notes a refusal; at the fiftieth, reading ends with UnreadableFile. */
  add(place: Place, reason: RefusalReason): void {
    if (this.#explained.has(placeOf(place))) return;
    this.#found.push(placedRefusal(this.#text, place, reason));
    if (this.#found.length >= mostRefusals) this.#end(true);
  }

  /** Notes a refusal that says all there is to say of its place; the rest of the file is read on. */
  explain(place: Place, reason: RefusalReason): void {
    this.add(place, reason);
    this.#explained.add(placeOf(place));
  }

  /** Notes a refusal after which nothing could be understood rightly, and throws all that was found. */
  stop(place: Place, reason: RefusalReason): never {
    this.#found.push(placedRefusal(this.#text, place, reason));
    return this.#end(false);
  }

  /** Throws UnreadableFile with all that was found, if anything was. */
  throwIfAny(): void {
    if (this.#found.length > 0) this.#end(false);
  }

  #end(stopped: boolean): never {
    const [first, ...rest] = this.#found.sort((a, b) => a.line - b.line || a.column - b.column);
    throw new UnreadableFile([first!, ...rest], stopped);
  }
}

function placeOf({ line, column }: Place): string {
  return `${line}:${column}`;
}

export function placedRefusal(text: TextFile, place: Place, reason: RefusalReason): FileRefusal {
  const { read, expected, suggestion } = reason;
  return {
    file: text.file,
    line: place.line,
    column: place.column,
    path: shortened(place.path, longestRead),
    read: shortened(read, longestRead),
    expected,
    ...(suggestion === undefined ? {} : { suggestion }),
    excerpt: excerptOf(text, place),
  };
}

const excerptWidth = 100;

function excerptOf(text: TextFile, { line, column }: Place) {
  const start = text.lineStarts[line - 1] ?? 0;
  const end = Math.max(start, (text.lineStarts[line] ?? text.text.length + 1) - 1);
  const at = Math.min(start + column - 1, end);
  const from = at - start > excerptWidth * 0.7 ? at - Math.round(excerptWidth * 0.5) : start;
  const to = Math.min(end, from + excerptWidth);
  const before = `${from > start ? '…' : ''}${text.text.slice(from, at)}`;
  const after = `${text.text.slice(at, to)}${to < end ? '…' : ''}`;
  return { text: visible(before + after), before: [...visible(before)].length };
}

/** One visible character for each that would act on the screen instead of standing on it. */
function visible(text: string): string {
  return text.replace(/\t/g, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '·');
}
