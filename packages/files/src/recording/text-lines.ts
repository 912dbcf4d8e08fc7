import { type ByteSource, ForwardBytes } from './byte-source.ts';
import { refusedAt } from './open-recording.ts';

/** A line of numbers is shorter, even of a thousand channels. */
const longestLine = 256 * 1024;

/**
 * The lines of a text one after another, one character for each byte, so that a place in it is a place in the file.
 * Holds one piece of it.
 */
export class TextLines {
  readonly #bytes: ForwardBytes;
  readonly #file: string;
  readonly #end: number;
  #text = '';
  #at = 0;
  #ended = false;
  /** Whether lines end in carriage returns alone, as on very old systems; the first piece tells. */
  #returns: boolean | undefined;
  /** Where in the file the next line begins. */
  place: number;
  /** Number of the line taken last, from 1. */
  line = 0;

  constructor(source: ByteSource, file: string, from = 0, end = source.size, piece?: number) {
    this.#bytes = new ForwardBytes(source, from, end, piece);
    this.#file = file;
    this.#end = Math.min(end, source.size);
    this.place = from;
  }

  /** The next line without its end; undefined where more must be fetched first, or where the text has ended. */
  take(): string | undefined {
    const end = this.#text.indexOf('\n', this.#at);
    if (end < 0) {
      if (!this.#ended || this.#at >= this.#text.length) return undefined;
      return this.#taken(this.#text.length, this.#text.length);
    }
    return this.#taken(end, end + 1);
  }

  /** Fetches the next piece; false at the end of the text. */
  async more(): Promise<boolean> {
    if (this.#ended) return this.#at < this.#text.length;
    const kept = this.#text.slice(this.#at);
    if (kept.length > longestLine) {
      throw refusedAt(this.#file, `line ${this.line + 1}`, {
        read: kept.slice(0, 60),
        expected: `lines of at most ${longestLine} characters`,
        suggestion: 'It may be no text.',
      });
    }
    const piece = await this.#bytes.rest();
    this.#bytes.skip(piece.length);
    if (piece.length === 0 || this.#bytes.place >= this.#end) this.#ended = true;
    const characters = charactersOf(piece);
    this.#returns ??= characters.includes('\r') && !characters.includes('\n');
    this.#text = kept + (this.#returns ? characters.replaceAll('\r', '\n') : characters);
    this.#at = 0;
    return this.#text.length > 0;
  }

  /** The next line, fetched where needed; undefined at the end. */
  async next(): Promise<string | undefined> {
    for (;;) {
      const line = this.take();
      if (line !== undefined) return line;
      if (!(await this.more())) return undefined;
    }
  }

  #taken(end: number, next: number): string {
    const line = this.#text.slice(this.#at, this.#text.charCodeAt(end - 1) === 13 && end > this.#at ? end - 1 : end);
    this.place += next - this.#at;
    this.#at = next;
    this.line++;
    return line;
  }
}

/** One character of the same number for each byte. */
export function charactersOf(bytes: Uint8Array): string {
  let text = '';
  for (let from = 0; from < bytes.length; from += 8192) {
    text += String.fromCharCode(...bytes.subarray(from, from + 8192));
  }
  return text;
}

/** What such characters say in words: UTF-8 where they are well-formed, else Windows-1252. */
export function wordsOf(characters: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a byte beyond ASCII is what is looked for
  if (!/[^\x00-\x7f]/.test(characters)) return characters;
  const bytes = Uint8Array.from(characters, (each) => each.charCodeAt(0));
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eEdD][+-]?\d{1,4})?$/;

/** The number a text writes with a decimal point; undefined where it is none. */
export function numberIn(text: string): number | undefined {
  if (!plainNumber.test(text)) return undefined;
  const value = Number(text.replace(/[dD]/, 'e'));
  return Number.isNaN(value) ? undefined : value;
}
