import { Broken } from '@soundpost/core';

export interface CsvContent {
  readonly channels: readonly CsvChannel[];
  /** Samples a second. */
  readonly rate: number;
  /** Date, time and zone of the first sample, where it is known. */
  readonly start?: string;
}

export interface CsvChannel {
  readonly name: string;
  readonly unit: string;
  readonly values: Float64Array;
  readonly sensitivity?: string;
  readonly gain?: string;
  readonly coupling?: string;
  readonly speed?: string;
}

const rowsAtOnce = 4096;

/**
 * The bytes of a text in columns, in pieces: a head that says what there is to say, names, units, and rows that begin
 * with the time. Separator comma, decimal point, and digits enough to read each number back as it was.
 */
export function* csvBytes({ channels, rate, start }: CsvContent): Generator<Uint8Array> {
  const rows = channels[0]?.values.length ?? 0;
  if (channels.length === 0 || channels.some(({ values }) => values.length !== rows) || !(rate > 0)) {
    throw new Broken('a table has columns of one length and a rate', { channels: channels.length, rate });
  }
  yield bytesOf(headOf(channels, rate, rows, start));
  for (let from = 0; from < rows; from += rowsAtOnce) {
    let text = '';
    for (let row = from; row < Math.min(rows, from + rowsAtOnce); row++) {
      text += `${timeText(row, rate)},${channels.map(({ values }) => numberText(values[row]!)).join(',')}\n`;
    }
    yield bytesOf(text);
  }
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function headOf(channels: readonly CsvChannel[], rate: number, rows: number, start: string | undefined): string {
  const facts = ['sensitivity', 'gain', 'coupling', 'speed'] as const;
  const line = (name: string, of: (channel: CsvChannel) => string) =>
    `${[name, ...channels.map(of)].map(plain).join(',')}\n`;
  return [
    'separator,comma\n',
    'decimal separator,point\n',
    ...(start === undefined ? [] : [`start,${plain(start)}\n`]),
    line('sampling rate', () => `${rate} Hz`),
    line('samples', () => String(rows)),
    ...facts
      .filter((fact) => channels.some((each) => each[fact] !== undefined))
      .map((fact) => line(fact, (each) => each[fact] ?? 'unknown')),
    line('Time [s]', ({ name, unit }) => (unit === '' ? name : `${name} [${unit}]`)),
  ].join('');
}

/** A name may hold no mark that parts columns or lines. */
function plain(text: string): string {
  return text.replace(/[,;\t\r\n]+/g, ' ').trim();
}

/** Twelve digits: beyond them the steps of the times would show the rounding of binary numbers. */
function timeText(row: number, rate: number): string {
  return String(Number((row / rate).toPrecision(12)));
}

function numberText(value: number): string {
  return Number.isFinite(value) ? (Object.is(value, -0) ? '-0' : String(value)) : 'NaN';
}
