import {
  type ChannelFact,
  type Finding,
  notStated,
  parseQuantity,
  type RecordedChannel,
  Refusal,
  type Stated,
  si,
  splitAtDetector,
  stated,
} from '@soundpost/core';
import { detectorInUnit, startsDiffer } from '../contradictions.ts';
import { recordedUnit } from '../recorded-unit.ts';
import { silentChannel } from '../silent-channel.ts';
import { numberIn } from '../text-lines.ts';
import { clockSeconds } from './clock.ts';
import type { PossibleLayout } from './number-layout.ts';
import { nameAndUnit, type TextHead, timeName, valueFor } from './text-head.ts';

/** Which columns are channels and which is their time, by what the head says. */
export interface TextColumns {
  readonly channels: readonly RecordedChannel[];
  /** Column of each channel. */
  readonly columnOf: readonly number[];
  readonly timeColumn: number | undefined;
  /** Columns of dates and times of day that are its time together, where no column of numbers is. */
  readonly clockColumns: readonly number[];
  /** Seconds of a 1 in the time column; 1 where its unit is not said. */
  readonly timeFactor: number;
  readonly start: Stated<string>;
  readonly findings: readonly Finding[];
}

type Heard = Partial<Record<ChannelFact, string>>;

export function columnsOf(head: TextHead, layout: PossibleLayout): TextColumns {
  const { columns } = layout;
  const named = timeColumnOf(head, columns);
  const timeColumn = named === undefined || layout.clocks.includes(named) ? undefined : named;
  const clock = clockText(layout.first, layout.clocks);
  const clockColumns = timeColumn === undefined && clockSeconds(clock) !== undefined ? layout.clocks : [];
  const time =
    timeColumn !== undefined ? timeUnitOf(head, timeColumn) : clockColumns.length > 0 ? { factor: 1 } : undefined;
  const columnOf = Array.from({ length: columns }, (_, index) => index).filter(
    (column) =>
      column !== timeColumn &&
      !layout.clocks.includes(column) &&
      !(columns > 2 && emptyThroughout(layout, head, column)),
  );
  const findings: Finding[] = [];
  const channels = columnOf.map((column, index) => {
    const channel = channelOf(head, layout, column, index, timeColumn ?? clockColumns[0], time);
    const { before, detector } = splitAtDetector(unitTextOf(head, column, columns));
    if (detector !== undefined && before.trim() !== '') {
      findings.push(detectorInUnit(channel.of, unitTextOf(head, column, columns)));
    }
    return channel;
  });
  const starts = [...new Set(columnOf.map((column) => startOf(head, column, columns)))].filter((each) => each !== '');
  if (starts.length > 1) {
    findings.push(startsDiffer('the recording', `channels start at ${starts.slice(0, 3).join(' and at ')}`));
  }
  return {
    channels,
    columnOf,
    timeColumn,
    clockColumns,
    timeFactor: time?.factor ?? 1,
    start: startStated(starts[0] ?? (clockColumns.length > 0 ? clock : undefined)),
    findings,
  };
}

function startStated(start: string | undefined): Stated<string> {
  return start === undefined ? notStated : stated(start, start);
}

/** Date and time of day of a row, as one text. */
export function clockText(fields: readonly string[], columns: readonly number[]): string {
  return columns.map((column) => (fields[column] ?? '').replace(/^"|"$/g, '')).join(' ');
}

function timeColumnOf({ names }: TextHead, columns: number): number | undefined {
  if (columns < 2) return undefined;
  const found = names.findIndex((each) => timeName.test(nameAndUnit(each).name));
  return found < 0 || found >= columns ? undefined : found;
}

/** The factor to seconds, where the head says the unit; a column of the x dimension 'Time' is in seconds by its form. */
function timeUnitOf(head: TextHead, column: number): { readonly factor: number } | undefined {
  const text = nameAndUnit(head.names[column]!).unit || (head.units[column] ?? '');
  const { unit } = recordedUnit(text);
  if (unit.known && unit.value.quantity === 'time') return { factor: unit.value.factor };
  const dimension = head.said.dimension?.values[0]?.toLowerCase();
  return text === '' && dimension === 'time' ? { factor: 1 } : undefined;
}

/** A column with a name for remarks, or none, and no number in the rows looked at. */
function emptyThroughout({ rows }: PossibleLayout, { names }: TextHead, column: number): boolean {
  if (rows.some((row) => !Number.isNaN(row[column]!))) return false;
  return /^(comment|comments|remark|remarks|note|notes|)$/i.test(names[column] ?? '');
}

function unitTextOf(head: TextHead, column: number, columns: number): string {
  const inName = nameAndUnit(head.names[column] ?? '').unit;
  return inName || (head.units[column] ?? '') || valueFor(head, 'unit', column, columns);
}

function channelOf(
  head: TextHead,
  layout: PossibleLayout,
  column: number,
  index: number,
  timeColumn: number | undefined,
  time: { readonly factor: number } | undefined,
): RecordedChannel {
  const { columns } = layout;
  const text = (fact: Parameters<typeof valueFor>[1]) => valueFor(head, fact, column, columns);
  const bare = nameAndUnit(head.names[column] ?? '').name;
  const silent = silentChannel(index);
  const { unit, heard: heardUnit } = recordedUnit(splitAtDetector(unitTextOf(head, column, columns)).before);
  const { rate, heard: heardRate } = rateOf(head, text);
  const samples = numberIn(text('samples'));
  const untold =
    layout.clocks.length > 0 && timeColumn === undefined
      ? `column ${layout.clocks[0]! + 1} holds dates without a time of day`
      : timeColumn === undefined
        ? risingColumn(layout, head)
        : time === undefined
          ? 'its time column has no unit'
          : undefined;
  const heard: Heard = {
    ...(unnamed.test(bare) ? { name: `the file says '${bare}'` } : {}),
    ...(heardUnit === undefined ? {} : { unit: heardUnit }),
    ...(heardRate === undefined && untold === undefined ? {} : { rate: heardRate ?? untold! }),
  };
  return {
    ...silent,
    of: bare === '' ? silent.of : bare,
    name: bare === '' || unnamed.test(bare) ? notStated : stated(bare, bare),
    rate,
    unit,
    sensitivity: said(text('sensitivity')),
    gain: said(text('gain')),
    coupling: said(text('coupling')),
    speed: said(text('speed')),
    ...(samples !== undefined && Number.isSafeInteger(samples) && samples >= 0 ? { claimedSamples: samples } : {}),
    ...(timeColumn === undefined
      ? {}
      : { abscissa: { of: time === undefined ? 'unknown' : 'time', even: false, first: 0, step: 0 } as const }),
    heard: rate.known ? withoutRate(heard) : heard,
  };
}

/** What recorders write where nobody gave a name. */
const unnamed = /^(untitled|unnamed|noname)\b/i;

function withoutRate({ rate: _, ...rest }: Heard): Heard {
  return rest;
}

function said(text: string): Stated<string> {
  return text === '' || /^(none|unknown|n\/?a|-+)$/i.test(text) ? notStated : stated(text, text);
}

/** The declared sampling rate: a frequency with its unit, or the time from one sample to the next. */
function rateOf(
  head: TextHead,
  text: (fact: 'rate' | 'step' | 'dimension') => string,
): { readonly rate: RecordedChannel['rate']; readonly heard?: string } {
  const rate = quantityIn(text('rate'), head.said.rate?.unit, 'frequency');
  if (typeof rate === 'number' && rate > 0) return { rate: stated(si('frequency', rate), text('rate')) };
  const inSeconds = text('dimension').toLowerCase() === 'time' ? 's' : undefined;
  const step = quantityIn(text('step'), head.said.step?.unit ?? inSeconds, 'time');
  if (typeof step === 'number' && step > 0) return { rate: stated(si('frequency', 1 / step), `one every ${step} s`) };
  const heard = typeof rate === 'string' ? rate : typeof step === 'string' ? step : undefined;
  return { rate: notStated, ...(heard === undefined ? {} : { heard }) };
}

/** The value in SI; words where something stands there that cannot be taken; undefined where nothing does. */
function quantityIn(text: string, unit: string | undefined, name: 'frequency' | 'time'): number | string | undefined {
  if (text === '') return undefined;
  const bare = numberIn(text) !== undefined;
  if (bare && unit === undefined) return `the file says ${text}, without a unit`;
  try {
    return parseQuantity(bare ? `${text} ${unit}` : text, name);
  } catch (error) {
    if (error instanceof Refusal) return `the file says '${text.slice(0, 40)}'`;
    throw error;
  }
}

/** Where no column is named as time, one that rises by even steps may be it: that is asked, not taken. */
function risingColumn({ rows, columns }: PossibleLayout, head: TextHead): string | undefined {
  if (columns < 2 || rows.length < 4) return undefined;
  for (let column = 0; column < columns; column++) {
    const step = rows[1]![column]! - rows[0]![column]!;
    const even = rows.every(
      (row, index) => index === 0 || Math.abs(row[column]! - rows[index - 1]![column]! - step) <= 0.51 * Math.abs(step),
    );
    if (!(step > 0 && even)) continue;
    const { unit } = recordedUnit(unitTextOf(head, column, columns));
    return unit.known && unit.value.quantity === 'frequency'
      ? `column ${column + 1} rises by even steps of frequency: a spectrum has no waveform, and no rate`
      : `column ${column + 1} rises by even steps and may be its time`;
  }
  return undefined;
}

function startOf(head: TextHead, column: number, columns: number): string {
  return [valueFor(head, 'date', column, columns), valueFor(head, 'time', column, columns)]
    .filter((each) => /\d/.test(each))
    .join(' ');
}
