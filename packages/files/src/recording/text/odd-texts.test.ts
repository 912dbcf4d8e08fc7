import { expect, test } from 'vitest';
import { readWhole, refusedSaying, rulesIn } from '../read-whole.ts';
import { clockSeconds } from './clock.ts';

/** What people feed: each is read as what it means, asked about, or refused with the reason; never guessed. */
const count = 300;
const value = (n: number) => (0.5 * Math.sin(n / 4)).toFixed(5);
const seconds = (n: number) => (n / 1000).toFixed(4);
const rows = (row: (n: number) => string) => `${Array.from({ length: count }, (_, n) => row(n)).join('\n')}\n`;
const bytes = (text: string) => new TextEncoder().encode(text);
const comma = (text: string) => text.replaceAll('.', ',');

/** The rate, the unit and the last value of the last channel. */
async function read(text: string | Uint8Array) {
  const whole = await readWhole(typeof text === 'string' ? bytes(text) : text);
  const { rate, unit, heard } = whole.recording.channels.at(-1)!;
  return {
    channels: whole.recording.channels.length,
    rate: rate.known ? Math.round(rate.value * 1000) / 1000 : undefined,
    unit: unit.known ? unit.value.written : undefined,
    last: whole.values.at(-1)!.at(-1),
    heard: heard.rate,
    rules: rulesIn(whole),
  };
}

const meant = { channels: 1, rate: 1000, unit: 'g', last: Number(value(count - 1)), rules: [] };

const readable: Readonly<Record<string, string | Uint8Array>> = {
  'semicolons and decimal commas': `Zeit [s];a [g]\n${rows((n) => comma(`${seconds(n)};${value(n)}`))}`,
  'times in milliseconds': `time (ms),a (g)\n${rows((n) => `${n},${value(n)}`)}`,
  'two lines of head': `Time,Ch1\ns,g\n${rows((n) => `${seconds(n)},${value(n)}`)}`,
  'units in a line of brackets': `Time;Ch1\n(ms);(g)\n${rows((n) => `${n};${value(n)}`)}`,
  'a mark of the byte order': `\ufeffTime [s],a [g]\n${rows((n) => `${seconds(n)},${value(n)}`)}`,
  'carriage returns alone': `Time [s],a [g]\n${rows((n) => `${seconds(n)},${value(n)}`)}`.replaceAll('\n', '\r'),
  'blank lines between': `Time [s],a [g]\n\n${rows((n) => `${seconds(n)},${value(n)}\n`)}`,
  'quotes about every field': `"Time [s]","a [g]"\n${rows((n) => `"${seconds(n)}","${value(n)}"`)}`,
  'the minus of typesetters': `Time [s],a [g]\n${rows((n) => `${seconds(n)},${value(n).replace('-', '\u2212')}`)}`,
  'a quantity over its unit': `Time/s,acc/g\n${rows((n) => `${seconds(n)},${value(n)}`)}`,
  'times of day': `time,a [g]\n${rows((n) => `14:05:${(n / 1000).toFixed(3).padStart(6, '0')},${value(n)}`)}`,
  'date and time of day in two columns': `date,time,a [g]\n${rows((n) => `20.11.2026,14:05:${(n / 1000).toFixed(3).padStart(6, '0')},${value(n)}`)}`,
  'a head above one column': `Sampling rate;1 kHz\nUnit;g\n${rows(value)}`,
};

test.each(Object.entries(readable))('read: %s', async (_, text) => {
  expect(await read(text)).toMatchObject(meant);
});

test.each(['utf-16le', 'utf-16be'] as const)('read: two bytes for each character, %s', async (order) => {
  const text = `\ufeffTime [s],a [g]\n${rows((n) => `${seconds(n)},${value(n)}`)}`;
  const wide = new Uint8Array(2 * text.length);
  const view = new DataView(wide.buffer);
  for (let at = 0; at < text.length; at++) view.setUint16(2 * at, text.charCodeAt(at), order === 'utf-16le');
  expect(await read(wide)).toMatchObject(meant);
  expect(await read(wide.subarray(2))).toMatchObject(meant);
});

test('midnight passes, with its date and without', async () => {
  const clock = (n: number) => {
    const at = 86_399.8 + n / 1000;
    const [day, of] = at < 86_400 ? [20, at] : [21, at - 86_400];
    const part = (x: number) => String(Math.floor(x)).padStart(2, '0');
    return { day, time: `${part(of / 3600)}:${part((of / 60) % 60)}:${(of % 60).toFixed(3).padStart(6, '0')}` };
  };
  const dated = (n: number) => `2026-11-${clock(n).day} ${clock(n).time}`;
  expect(await read(`timestamp,a [g]\n${rows((n) => `${dated(n)},${value(n)}`)}`)).toMatchObject(meant);
  expect(await read(`time,a [g]\n${rows((n) => `${clock(n).time},${value(n)}`)}`)).toMatchObject(meant);
});

test('asked: times of whole seconds, an index, a column without a name, a rate without a unit, a spectrum', async () => {
  const coarse = await read(`time,a [g]\n${rows((n) => `14:05:0${Math.floor(n / 100)},${value(n)}`)}`);
  expect(coarse).toMatchObject({ rate: undefined, rules: ['times-fine-enough'] });
  expect(coarse.heard).toMatch(/too coarsely/);
  const index = await read(`Sample,a [g]\n${rows((n) => `${n},${value(n)}`)}`);
  expect(index).toMatchObject({ rate: undefined });
  expect(index.heard).toMatch(/may be its time/);
  expect((await read(`Fs=1000\na [g]\n${rows(value)}`)).heard).toMatch(/1000, without a unit/);
  const spectrum = await read(`Frequency [Hz],a [g]\n${rows((n) => `${n / 2},${value(n)}`)}`);
  expect(spectrum.heard).toMatch(/a spectrum has no waveform/);
});

test('refused with the reason: commas within and between numbers, marks between thousands, one row, no row', async () => {
  const saying = (text: string) => refusedSaying(read(text));
  const twice = `Time,a\n${rows((n) =>
    comma(`${seconds(n)}|${value(Math.abs(n % 6))}`)
      .replace('|', ',')
      .replace('-', ''),
  )}`;
  expect(await saying(twice)).toMatch(/twice as many columns as names/);
  expect(await saying(`Time [s],a [g]\n${rows((n) => `${seconds(n)},"1,00${n % 10}.5"`)}`)).toMatch(/thousands/);
  expect(await saying('Time [s],a [g]\n0,1\n')).toMatch(/Two rows at least/);
  expect(await saying('Time [s],a [g]\n')).toMatch(/Two rows at least/);
});

test('a gap in the times, values that are none, and an overflow are told', async () => {
  const gap = rows((n) => (n > 100 && n < 150 ? '' : `${seconds(n)},${value(n)}`)).replace(/\n+/g, '\n');
  expect((await read(`Time [s],a [g]\n${gap}`)).rules).toEqual(['times-even']);
  const none = rows((n) => `${seconds(n)},${n > 100 && n < 110 ? 'NaN' : value(n)}`);
  expect((await read(`Time [s],a [g]\n${none}`)).rules).toEqual(['values-are-numbers']);
  const over = rows((n) => `${seconds(n)},${n === 77 ? 'inf' : value(n)}`);
  expect((await read(`Time [s],a [g]\n${over}`)).rules).toEqual(['values-are-numbers']);
});

test.each([
  ['14:05:07.125', 50_707.125],
  ['2:05:07 PM', 50_707],
  ['12:00:00 am', 0],
  ['1970-01-02T00:00:01Z', 86_401],
  ['02.01.1970 00:00:01,5', 86_401.5],
  ['01/13/1970 00:00:00', 12 * 86_400],
  ['25:00:00', undefined],
  ['2026-11-20', undefined],
])('a clock that shows %s', (text, expected) => {
  expect(clockSeconds(text)).toBe(expected);
});
