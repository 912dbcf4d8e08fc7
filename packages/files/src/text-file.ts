import type { RefusalReason } from '@soundpost/core';
import { firstInvalid, otherThanUtf8 } from './encoding.ts';
import { placedRefusal, UnreadableFile } from './file-refusal.ts';
import type { Place } from './placed.ts';
import { unseen, unseenReason } from './unseen.ts';

/** The text of a file: Unicode in composed form (NFC), lines ended by `\n` alone, nothing invisible in it. */
export interface TextFile {
  readonly file: string;
  readonly text: string;
  /** Where each line starts in the text. */
  readonly lineStarts: Uint32Array;
}

/** A file larger than this is refused before it is looked at. */
export const largestFile = 16 * 1024 * 1024;

/**
 * The text of a file's bytes. Throws UnreadableFile for what is too large, is not UTF-8, or holds characters that
 * cannot be seen; each sentence names what the file looks like and how to save it. Time and memory grow no faster than
 * the file.
 */
export function textFile(bytes: Uint8Array, file: string, largest = largestFile): TextFile {
  if (bytes.length > largest) {
    refuse(bare(file), 0, {
      read: `a file of ${mebibytes(bytes.length)}`,
      expected: `at most ${mebibytes(largest)}`,
      suggestion: 'Is it the right file? Recordings and long tables stand in files of their own.',
    });
  }
  const looks = otherThanUtf8(bytes);
  if (looks !== undefined) {
    refuse(bare(file), 0, { read: looks.what, expected: 'a text file in UTF-8', suggestion: looks.instead });
  }
  const decoded = decodedUtf8(bytes, file);
  const text = decoded.replaceAll('\r\n', '\n');
  const found = unseen.exec(text);
  if (found !== null) refuse(linesOf(file, text), found.index, unseenReason(found[0]));
  return linesOf(file, text.normalize('NFC'));
}

/** The place of an offset in the text. */
export function placeAt(text: TextFile, offset: number, path = ''): Place {
  const { lineStarts } = text;
  let [low, high] = [0, lineStarts.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lineStarts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - lineStarts[low]! + 1, path };
}

function decodedUtf8(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuseInvalid(bytes, file);
  }
}

function refuseInvalid(bytes: Uint8Array, file: string): never {
  const at = firstInvalid(bytes);
  const before = new TextDecoder('utf-8').decode(bytes.subarray(0, at)).replaceAll('\r\n', '\n');
  const wide = new TextDecoder('windows-1252');
  const end = bytes.indexOf(0x0a, at);
  const line = before + wide.decode(bytes.subarray(at, Math.min(end < 0 ? bytes.length : end, at + 200)));
  const byte = bytes[at] ?? 0;
  const meant = wide.decode(bytes.subarray(at, at + 1));
  const cut = at + 4 > bytes.length && byte >= 0xc2 && bytes.subarray(at + 1).every((next) => (next & 0xc0) === 0x80);
  refuse(linesOf(file, line), before.length, {
    read: `byte ${byte.toString(16).toUpperCase().padStart(2, '0')}`,
    expected: 'a text file in UTF-8',
    suggestion:
      (cut ? 'The file ends inside a character: it may be cut off. ' : '') +
      `In Windows-1252 (Latin-1) the byte is '${meant}': save the file as UTF-8.`,
  });
}

function linesOf(file: string, text: string): TextFile {
  let lines = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines++;
  const lineStarts = new Uint32Array(lines);
  let line = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lineStarts[++line] = at + 1;
  return { file, text, lineStarts };
}

function bare(file: string): TextFile {
  return { file, text: '', lineStarts: new Uint32Array(1) };
}

function refuse(text: TextFile, offset: number, reason: RefusalReason): never {
  const refusal = placedRefusal(text, placeAt(text, offset), reason);
  if (text.text !== '') throw new UnreadableFile([refusal]);
  const { excerpt: _, ...placed } = refusal;
  throw new UnreadableFile([placed]);
}

function mebibytes(bytes: number): string {
  return bytes >= 1024 * 1024 ? `${(bytes / 1024 / 1024).toFixed(1)} MiB` : `${bytes} bytes`;
}

/** Where nothing stands at a place and a comment follows in the line: the value may have begun with '#'. */
export function commentSuggestion(text: TextFile, { line, column }: Place): string | undefined {
  const start = text.lineStarts[line - 1]! + column - 1;
  const rest = text.text.slice(start, start + 200).split('\n', 1)[0]!;
  return /^\s*#/.test(rest) ? "What follows ' #' is a comment; put a text that begins with '#' in quotes." : undefined;
}
