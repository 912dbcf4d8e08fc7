import { Broken } from '@soundpost/core';
import { viewOf } from '../wav/riff-chunks.ts';
import { lineWidths } from './data-widths.ts';

/** One function to be written as a dataset 58: one channel. */
export interface WrittenFunction {
  /** The first line of description: what and where it is. */
  readonly name: string;
  /** As the format writes dates: `25-Nov-26 17:04:32`. */
  readonly when?: string;
  /** 1 time response, 4 frequency response, 12 spectrum. */
  readonly functionType: number;
  readonly node?: number;
  /** ±1, ±2, ±3 along X, Y, Z; ±4, ±5, ±6 about them. */
  readonly direction?: number;
  readonly abscissa: WrittenAxis;
  readonly ordinate: WrittenAxis;
  /** Evenly from `first` by `step`, or where each value stands. */
  readonly along: { readonly first: number; readonly step: number } | Float64Array;
  readonly values: Float64Array;
  readonly imaginary?: Float64Array;
  readonly precision: 'single' | 'double';
}

/** What is along an axis, by the number the format gives it (8 displacement, 11 velocity, 12 acceleration, 17 time). */
export interface WrittenAxis {
  readonly specificType: number;
  readonly label: string;
  readonly unit: string;
}

export type UniversalForm = 'text' | 'little-endian' | 'big-endian';

/** A whole number of lines in each of the eight cases. */
const valuesAtOnce = 8184;

/** The bytes of a Universal File with these functions, in pieces: dataset 58 as text, 58b as binary. */
export function* universalBytes(functions: readonly WrittenFunction[], form: UniversalForm): Generator<Uint8Array> {
  for (const each of functions) {
    const even = !(each.along instanceof Float64Array);
    const { length } = each.values;
    if (!even && each.along.length !== length) throw new Broken('each value stands somewhere', { name: each.name });
    yield textBytes(headOf(each, form));
    for (let from = 0; from < length; from += valuesAtOnce) {
      const to = Math.min(length, from + valuesAtOnce);
      yield form === 'text' ? textBytes(linesOf(each, from, to)) : binaryOf(each, from, to, form === 'little-endian');
    }
    yield textBytes(`${form === 'text' ? '' : '\n'}    -1\n`);
  }
}

function textBytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

type Part = (index: number) => number;

function partsOf({ along, values, imaginary }: WrittenFunction): readonly Part[] {
  return [
    ...(along instanceof Float64Array ? [(index: number) => along[index]!] : []),
    (index) => values[index]!,
    ...(imaginary === undefined ? [] : [(index: number) => imaginary[index]!]),
  ];
}

/** Bytes of each part: an abscissa is single precision by the format. */
function widthsOf(written: WrittenFunction): readonly number[] {
  const width = written.precision === 'double' ? 8 : 4;
  return partsOf(written).map((_, part) => (part === 0 && written.along instanceof Float64Array ? 4 : width));
}

function headOf(written: WrittenFunction, form: UniversalForm): string {
  const { along, values, imaginary, precision, abscissa, ordinate } = written;
  const even = along instanceof Float64Array ? undefined : along;
  const type = (imaginary === undefined ? 2 : 5) + (precision === 'single' ? 0 : imaginary === undefined ? 2 : 1);
  const bytes = values.length * widthsOf(written).reduce((sum, each) => sum + each, 0);
  const whole = (value: number, width: number) => String(value).padStart(width);
  const first =
    form === 'text'
      ? '    58'
      : `    58b${whole(form === 'little-endian' ? 1 : 2, 6)}${whole(2, 6)}${whole(11, 12)}${whole(bytes, 12)}${whole(0, 6)}${whole(0, 6)}${whole(0, 12)}${whole(0, 12)}`;
  const place = `${named(written.node === undefined ? '' : 'NONE', 10)}${whole(written.node ?? 0, 10)}${whole(written.direction ?? 0, 4)}`;
  return [
    '    -1',
    first.padEnd(80),
    named(written.name, 80),
    named('', 80),
    named(written.when ?? '', 80),
    named('', 80),
    named('', 80),
    `${whole(written.functionType, 5)}${whole(0, 10)}${whole(0, 5)}${whole(0, 10)} ${place} ${named('', 10)}${whole(0, 10)}${whole(0, 4)}`,
    `${whole(type, 10)}${whole(values.length, 10)}${whole(even === undefined ? 0 : 1, 10)}${numberText(even?.first ?? 0, 13)}${numberText(even?.step ?? 0, 13)}${numberText(0, 13)}`,
    axisLine(abscissa),
    axisLine(ordinate),
    axisLine({ specificType: 0, label: '', unit: '' }),
    axisLine({ specificType: 0, label: '', unit: '' }),
    '',
  ].join('\n');
}

function axisLine({ specificType, label, unit }: WrittenAxis): string {
  return `${String(specificType).padStart(10)}${'    0'.repeat(3)} ${named(label, 20)} ${named(unit, 20)}`;
}

/** Fields of the format are ASCII of a fixed width; what is not said is `NONE`. */
function named(text: string, width: number): string {
  const plain = text
    .replace(/[µμ]/g, 'u')
    .replace(/²/g, '2')
    .replace(/[^\x20-\x7e]/g, '?');
  return (plain.trim() === '' ? 'NONE' : plain).slice(0, width).padEnd(width);
}

/** `E13.5` and `E20.12` hold six and thirteen digits. */
function numberText(value: number, width: number): string {
  if (!Number.isFinite(value)) return 'NaN'.padStart(width);
  return value
    .toExponential(width === 13 ? 5 : 12)
    .replace(/e([+-])(\d)$/, 'E$10$2')
    .replace('e', 'E')
    .padStart(width);
}

function linesOf(written: WrittenFunction, from: number, to: number): string {
  const parts = partsOf(written);
  const widths = lineWidths({
    double: written.precision === 'double',
    even: !(written.along instanceof Float64Array),
    complex: written.imaginary !== undefined,
  });
  const numbers: string[] = [];
  for (let index = from; index < to; index++) {
    for (const part of parts) numbers.push(numberText(part(index), widths[numbers.length % widths.length]!));
  }
  const lines: string[] = [];
  for (let at = 0; at < numbers.length; at += widths.length) lines.push(numbers.slice(at, at + widths.length).join(''));
  return `${lines.join('\n')}\n`;
}

function binaryOf(written: WrittenFunction, from: number, to: number, littleEndian: boolean): Uint8Array {
  const parts = partsOf(written);
  const widths = widthsOf(written);
  const bytes = new Uint8Array((to - from) * widths.reduce((sum, each) => sum + each, 0));
  const view = viewOf(bytes);
  let at = 0;
  for (let index = from; index < to; index++) {
    for (const [part, width] of widths.entries()) {
      if (width === 4) view.setFloat32(at, parts[part]!(index), littleEndian);
      else view.setFloat64(at, parts[part]!(index), littleEndian);
      at += width;
    }
  }
  return bytes;
}
