import { refusedAt } from '../open-recording.ts';
import { numberIn, wordsOf } from '../text-lines.ts';

/** One axis of a function: what it is of, by its number in the format, and the words given for it. */
export interface Axis {
  readonly specificType: number;
  readonly label: string;
  readonly unit: string;
}

/** How the values of a 58b dataset are written. */
export interface BinaryForm {
  readonly littleEndian: boolean;
  readonly bytes: number;
}

/** The head of a dataset 58: a function at a node. Source: the format's own description, read second-hand. */
export interface Dataset58 {
  readonly idLines: readonly string[];
  readonly functionType: number;
  readonly response: { readonly entity: string; readonly node: number; readonly direction: number };
  readonly complex: boolean;
  readonly double: boolean;
  readonly even: boolean;
  readonly count: number;
  readonly first: number;
  readonly step: number;
  readonly abscissa: Axis;
  readonly ordinate: Axis;
  readonly denominator: Axis;
  readonly binary?: BinaryForm;
}

export const headLines = 11;

/** The words of functions, by their number. */
export const functionNames: readonly string[] =
  'general,time response,auto spectrum,cross spectrum,frequency response,transmissibility,coherence,auto correlation,cross correlation,power spectral density,energy spectral density,probability density,spectrum'.split(
    ',',
  );

/** Reads the line that names the dataset, where it is a binary one. Throws Refusal. */
export function binaryFormOf(line: string, file: string, at: number): BinaryForm | undefined {
  if (!/^ *58b/i.test(line)) return undefined;
  const [order, float, , bytes] = line
    .replace(/^ *58b/i, '')
    .trim()
    .split(/\s+/)
    .map(Number);
  const place = `line ${at}`;
  if (float !== 2) {
    const names = ['', 'VMS floats', 'IEEE floats', 'IBM floats'];
    throw refusedAt(file, place, {
      read: names[float ?? 0] ?? `number form ${float}`,
      expected: 'IEEE floats, number form 2',
      suggestion: 'Export the recording as text (dataset 58) or with IEEE floats.',
    });
  }
  if (order !== 1 && order !== 2) {
    throw refusedAt(file, place, {
      read: `byte order ${order}`,
      expected: 'byte order 1 (little-endian) or 2 (big-endian)',
    });
  }
  return { littleEndian: order === 1, bytes: Number.isSafeInteger(bytes) && bytes! >= 0 ? bytes! : 0 };
}

/** Reads the eleven lines of a head; `at` is the number of the first of them. Throws Refusal. */
export function dataset58(lines: readonly string[], file: string, at: number, binary?: BinaryForm): Dataset58 {
  const degrees = lines[5]!;
  const form = lines[6]!;
  const type = whole(form, 0, 10);
  if (type !== 2 && type !== 4 && type !== 5 && type !== 6) {
    throw refusedAt(file, `line ${at + 6}`, {
      read: form.slice(0, 10).trim(),
      expected: 'an ordinate type: 2 or 4 (real), 5 or 6 (complex)',
    });
  }
  const count = whole(form, 10, 10);
  if (count === undefined || count < 0) {
    throw refusedAt(file, `line ${at + 6}`, { read: form.slice(10, 20).trim(), expected: 'a number of values' });
  }
  const spacing = whole(form, 20, 10);
  if (spacing !== 0 && spacing !== 1) {
    throw refusedAt(file, `line ${at + 6}`, {
      read: form.slice(20, 30).trim(),
      expected: 'an abscissa spacing: 0 (uneven) or 1 (even)',
    });
  }
  return {
    idLines: lines.slice(0, 5).map((each) => idOf(each)),
    functionType: whole(degrees, 0, 5) ?? 0,
    response: {
      entity: named(degrees.slice(31, 41)),
      node: whole(degrees, 41, 10) ?? 0,
      direction: whole(degrees, 51, 4) ?? 0,
    },
    complex: type >= 5,
    double: type === 4 || type === 6,
    even: spacing === 1,
    count,
    first: real(form, 30),
    step: real(form, 43),
    abscissa: axisOf(lines[7]!),
    ordinate: axisOf(lines[8]!),
    denominator: axisOf(lines[9]!),
    ...(binary === undefined ? {} : { binary }),
  };
}

function whole(line: string, from: number, width: number): number | undefined {
  const text = line.slice(from, from + width).trim();
  return /^[+-]?\d+$/.test(text) ? Number(text) : undefined;
}

function real(line: string, from: number): number {
  const value = numberIn(line.slice(from, from + 13).trim());
  return value === undefined || !Number.isFinite(value) ? 0 : value;
}

function axisOf(line: string): Axis {
  return {
    specificType: whole(line, 0, 10) ?? 0,
    label: named(line.slice(25, 46)),
    unit: named(line.slice(46, 67)),
  };
}

function idOf(line: string): string {
  return named(line.slice(0, 80));
}

function named(text: string): string {
  const words = wordsOf(text).trim();
  return /^none$/i.test(words) ? '' : words;
}
