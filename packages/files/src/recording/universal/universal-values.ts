import { type ByteSource, ForwardBytes } from '../byte-source.ts';
import { refusedAt } from '../open-recording.ts';
import { numberIn, TextLines } from '../text-lines.ts';
import { viewOf } from '../wav/riff-chunks.ts';
import { lineWidths, partsOf, sum } from './data-widths.ts';
import { numbersIn, type PlacedDataset } from './universal-index.ts';

/** The next values of one dataset: a number for each part of a value. */
export interface Values {
  readonly value: Float64Array;
  readonly imaginary: Float64Array;
  readonly along: Float64Array;
}

/** Reads the values of one dataset in order, so many at a time. */
export interface ValueCursor {
  next(count: number): Promise<Values>;
}

export function valueCursor(source: ByteSource, file: string, placed: PlacedDataset, piece: number): ValueCursor {
  return placed.widths === undefined ? textCursor(source, file, placed, piece) : binaryCursor(source, placed, piece);
}

function emptyValues(placed: PlacedDataset, count: number): Values {
  const { complex, even } = placed.head;
  return {
    value: new Float64Array(count),
    imaginary: new Float64Array(complex ? count : 0),
    along: new Float64Array(even ? 0 : count),
  };
}

function textCursor(source: ByteSource, file: string, placed: PlacedDataset, piece: number): ValueCursor {
  const lines = new TextLines(source, file, placed.from, placed.end, piece);
  const widths = lineWidths(placed.head);
  const parts = partsOf(placed.head);
  let waiting: readonly string[] = [];
  let at = 0;
  return {
    async next(count) {
      const values = emptyValues(placed, count);
      const total = count * parts.length;
      for (let filled = 0; filled < total; ) {
        if (at >= waiting.length) {
          const line = await lines.next();
          if (line === undefined) break;
          waiting = numbersIn(line, widths);
          at = 0;
          continue;
        }
        const text = waiting[at++]!;
        values[parts[filled % parts.length]!][Math.floor(filled / parts.length)] = numberOr(text, file, placed);
        filled++;
      }
      return values;
    },
  };
}

/** Fortran writes stars where a number does not fit, and words where it is none: both are no number, not an error. */
function numberOr(text: string, file: string, { from }: PlacedDataset): number {
  const value = numberIn(text) ?? numberIn(text.replace(/(\d)([+-]\d+)$/, '$1e$2'));
  if (value !== undefined) return value;
  if (/^(\*+|[+-]?(nan|inf(inity)?)(\(.*\))?)$/i.test(text)) return Number.NaN;
  throw refusedAt(file, `after byte ${from}`, { read: text, expected: 'a number of a dataset 58' });
}

function binaryCursor(source: ByteSource, placed: PlacedDataset, piece: number): ValueCursor {
  const bytes = new ForwardBytes(source, placed.from, placed.end, piece);
  const widths = placed.widths!;
  const parts = partsOf(placed.head);
  const { littleEndian } = placed.head.binary!;
  return {
    async next(count) {
      const taken = await bytes.take(count * sum(widths));
      const view = viewOf(taken);
      const values = emptyValues(placed, count);
      const whole = Math.floor(taken.length / sum(widths));
      let at = 0;
      for (let index = 0; index < whole; index++) {
        for (let part = 0; part < parts.length; part++) {
          values[parts[part]!][index] =
            widths[part] === 4 ? view.getFloat32(at, littleEndian) : view.getFloat64(at, littleEndian);
          at += widths[part]!;
        }
      }
      return values;
    },
  };
}
