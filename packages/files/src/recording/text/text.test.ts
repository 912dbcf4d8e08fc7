import { questionsOf, showMeasure } from '@soundpost/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ReadingChoices } from '../open-recording.ts';
import { inOnePiece, readWhole, refusedSaying, rulesIn } from '../read-whole.ts';
import { csvBytes } from './write-csv.ts';

const read = (text: string, choices?: ReadingChoices) => readWhole(new TextEncoder().encode(text), choices);
const refused = (text: string, choices?: ReadingChoices) => refusedSaying(read(text, choices));
const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, i) => row(i)).join('\n');

test.each([
  ['comma', 'Time [s],A [g],B [V]\n', '0,1.5,2\n0.5,-3e-2,4\n1,5,6'],
  ['semicolon', 'Time [s];A [g];B [V]\n', '0;1,5;2\n0,5;-3e-2;4\n1;5;6'],
  ['semicolon, point', 'Time [s];A [g];B [V]\n', '0;1.5;2\n0.5;-3e-2;4\n1;5;6'],
  ['tab', 'Time [s]\tA [g]\tB [V]\r\n', '0\t1.5\t2\r\n0.5\t-3e-2\t4\r\n1\t5\t6\r\n'],
  ['spaces', 'Time[s] A[g] B[V]\n', '  0   1.5  2\n  0.5 -3e-2 4\n  1 5 6\n'],
  ['a line of units', 'Time;A;B\n[s];[g];[V]\n', '0;1.5;2\n0.5;-3e-2;4\n1;5;6'],
])('the same numbers by %s', async (_, head, body) => {
  const { values, along, recording } = await read(head + body);
  expect(values).toEqual([
    [1.5, -0.03, 5],
    [2, 4, 6],
  ]);
  expect(along[0]).toEqual([0, 0.5, 1]);
  expect(recording.channels).toMatchObject([
    { name: { value: 'A' }, unit: { value: { quantity: 'acceleration' } }, rate: { value: 2 } },
    { name: { value: 'B' }, unit: { value: { quantity: 'voltage' } }, rate: { value: 2 } },
  ]);
});

test('what could be a decimal comma or a separator is asked, and read as it is answered', async () => {
  const text = rows(20, (i) => `${i},${i + 1}`);
  expect(await refused(text)).toMatch(/as one column \(0\.1; .*as 2 columns \(0 and 1; .*--sign point\|comma/);
  expect((await read(text, { decimal: 'comma' })).values).toEqual([
    Array.from({ length: 20 }, (_, i) => Number(`${i}.${i + 1}`)),
  ]);
  expect((await read(text, { separator: 'comma' })).values).toHaveLength(2);
  // A head of two names, and one that declares it, settle it too.
  expect((await read(`left,right\n${text}`)).values).toHaveLength(2);
  expect((await read(`decimal separator;comma\n${text}`)).values).toHaveLength(1);
  expect(await refused(rows(9, (i) => `1,23${i}.5`))).toContain('marks between thousands');
});

test('sampling rate, sensitivity and the rest, for all channels or for each', async () => {
  const text = [
    '# Sample rate: 25.6 kHz',
    '# Coupling = AC',
    '# Speed: 1486 r/min',
    '# Operator: nobody',
    'sensitivity,100 mV/g,98.7 mV/g',
    'gain,1,10',
    'drive end,free end',
    'm/s2,m/s2',
    rows(20, (i) => `${i / 8},${-i / 8}`),
  ].join('\n');
  const { recording } = await read(text);
  expect(recording.channels).toMatchObject([
    { name: { value: 'drive end' }, rate: { value: 25_600 }, sensitivity: { value: '100 mV/g' }, gain: { value: '1' } },
    {
      name: { value: 'free end' },
      coupling: { value: 'AC' },
      sensitivity: { value: '98.7 mV/g' },
      gain: { value: '10' },
    },
  ]);
  expect(recording.channels[0]!.speed).toMatchObject({ value: '1486 r/min' });
  expect(recording.remarks).toContainEqual({ name: 'Operator', text: 'nobody' });
  expect(questionsOf(recording)).toEqual([{ of: 'the recording', what: 'date, time and time zone of its start' }]);
});

test('what stands without a unit is told with its question, and not taken', async () => {
  const rate = await read(`Sampling rate;51200\nA;B\n${rows(9, (i) => `${i / 4};1`)}`);
  expect(rate.recording.channels[0]!.rate.known).toBe(false);
  expect(questionsOf(rate.recording)[0]!.what).toBe('sampling rate (the file says 51200, without a unit)');
  const time = await read(`Time;A\n${rows(9, (i) => `${i};${i / 4}`)}`);
  expect(time.recording.channels[0]!.rate.known).toBe(false);
  expect(time.recording.channels[0]!.heard.rate).toBe('its time column has no unit');
  const bare = await read(rows(9, (i) => `${i / 100};${Math.sin(i)}`));
  expect(bare.recording.channels[1]!.heard.rate).toContain('column 1 rises by even steps');
  const pounds = await read(`A [pounds];B [C]\n${rows(9, (i) => `${i / 4};1`)}`);
  expect(pounds.recording.channels.map(({ heard }) => heard.unit)).toEqual([
    "the file says 'pounds'",
    "the file says 'C'",
  ]);
});

const seconds = (count: number, time: (index: number) => number, more = '') =>
  `Sampling rate;1000 Hz\n${more}Time [s];A [g]\n${rows(count, (i) => `${time(i)};${Math.sin(i)}`)}`;

test('a declared rate is held against the time column', async () => {
  expect(rulesIn(await read(seconds(200, (i) => i / 1000)))).toEqual([]);
  const thinned = await read(seconds(200, (i) => i / 250));
  expect(rulesIn(thinned)).toEqual(['rate-against-time-column']);
  expect(showMeasure(thinned.recording.findings[0]!.because)).toContain('one sample in 4');
  expect(thinned.recording.channels[0]!.rate.known).toBe(false);
  expect(rulesIn(await read(seconds(200, (i) => i / 1001)))).toEqual(['rate-against-time-column']);
});

test('rounded times are no contradiction; gaps, steps back and repeats are told', async () => {
  // Steps of 19.53 µs written to a microsecond.
  const fine = `Sampling rate;51200 Hz\nTime [s];A [g]\n${rows(500, (i) => `${(i / 51_200).toFixed(6)};${Math.sin(i)}`)}`;
  expect(rulesIn(await read(fine))).toEqual([]);
  expect(rulesIn(await read(seconds(200, (i) => (i < 100 ? i : i + 50) / 1000)))).toEqual(['times-even']);
  expect(rulesIn(await read(seconds(200, (i) => (i < 100 ? i : i - 50) / 1000)))).toEqual(['times-even']);
  expect(rulesIn(await read(seconds(200, (i) => Number((i / 1000).toFixed(2)))))).toContain('times-fine-enough');
});

test('numbers that are counts or shares of full scale contradict a unit of acceleration', async () => {
  const of = (value: (index: number) => number) =>
    read(`A [g];B [g]\n${rows(200, (i) => `${value(i)};${Math.sin(i)}`)}`);
  expect(rulesIn(await of((i) => Math.round(1000 * Math.sin(i))))).toEqual(['unit-against-step']);
  expect(rulesIn(await of((i) => Math.round(32_768 * 0.7 * Math.sin(i)) / 32_768))).toEqual(['unit-against-step']);
  expect(rulesIn(await of((i) => Math.round(1000 * Math.sin(i)) / 1000))).toEqual([]);
});

test('empty cells, words for no number, and channels that end early', async () => {
  const gaps = await read(`A;B\n${rows(20, (i) => `${i === 3 ? '' : i === 5 ? 'n/a' : i === 6 ? '-' : i / 4};1.5`)}`);
  expect(gaps.channels[0]).toMatchObject({ samples: 20, notNumbers: 3 });
  expect(rulesIn(gaps)).toEqual(['values-are-numbers']);
  const ended = await read(`Samples;20;5\nA;B\n${rows(20, (i) => `${i / 4};${i < 5 ? i / 8 : ''}`)}`);
  expect(ended.values.map(({ length }) => length)).toEqual([20, 5]);
  expect(ended.recording.findings).toEqual([]);
  const short = await read(`Samples;20;5\nA;B\n${rows(12, (i) => `${i / 4};${i < 5 ? i / 8 : ''}`)}`);
  expect(rulesIn(short)).toEqual(['length-against-file']);
});

test('channels of one start and of two', async () => {
  const of = (first: string, second: string) =>
    read(`date;2026/11/25;2026/11/25\ntime;${first};${second}\nA;B\n${rows(9, (i) => `${i / 4};1.5`)}`);
  const one = await of('17:04:32', '17:04:32');
  expect(rulesIn(one)).toEqual([]);
  expect(one.recording.start).toMatchObject({ value: '2026/11/25 17:04:32' });
  expect(questionsOf(one.recording)).toContainEqual({ of: 'the recording', what: 'time zone of its start' });
  expect(rulesIn(await of('17:04:32', '17:05:40'))).toEqual(['one-start']);
});

test('dates and clock times stand beside the numbers as their time, and are not taken for numbers', async () => {
  const whole = await read(`Timestamp;A [g]\n${rows(9, (i) => `2026-11-25 17:04:0${i}.5;${i / 4}`)}`);
  expect(whole.values).toEqual([Array.from({ length: 9 }, (_, i) => i / 4)]);
  expect(whole.recording.channels[0]!.rate).toMatchObject({ known: true, value: 1 });
  expect(whole.recording.start).toMatchObject({ value: '2026-11-25 17:04:00.5' });
  const days = await read(`Date;A [g]\n${rows(9, (i) => `2026-11-0${i + 1};${i / 4}`)}`);
  expect(days.recording.channels[0]!.heard.rate).toBe('column 1 holds dates without a time of day');
  const parted = await read(rows(9, (i) => `2026/11/25,17:04:0${i},${i / 4},1.5`));
  expect(parted.values).toHaveLength(2);
});

test('columns that are called as a fact is, numbers in quotes, hours and microseconds without a head', async () => {
  const named = await read(`Speed [r/min],Vibration [g]\n${rows(9, (i) => `${1480 + i / 4},1.5`)}`);
  expect(named.recording.channels.map(({ of }) => of)).toEqual(['Speed', 'Vibration']);
  const quoted = await read(`"A";"B"\n${rows(9, (i) => `"${i / 4}";"1.5"`)}`);
  expect(quoted.values[0]).toEqual(Array.from({ length: 9 }, (_, i) => i / 4));
  const bare = await read(rows(9, (i) => `9,39,39,${65_664 + 39 * i},0.552,-0.146`));
  expect(bare.values).toHaveLength(6);
  expect(bare.recording.channels[0]!.heard.rate).toContain('column 4 rises by even steps');
});

test('a unit with a detector is no unit of a waveform', async () => {
  const trend = await read(`Time [s];Velocity [mm/s rms]\n${rows(9, (i) => `${i};${1 + i / 10}`)}`);
  expect(rulesIn(trend)).toEqual(['waveform-has-no-detector']);
});

test('letters of other alphabets in the head, in UTF-8 with and without its mark and in Windows-1252', async () => {
  const text = 'Weg [µm];Mühle [m/s²]\n1.5;2.5\n2.5;3\n';
  const utf8 = new TextEncoder().encode(text);
  const wide = Uint8Array.from(text, (each) => each.charCodeAt(0));
  for (const bytes of [utf8, Uint8Array.of(0xef, 0xbb, 0xbf, ...utf8), wide]) {
    const { recording } = await readWhole(bytes);
    expect(recording.channels).toMatchObject([
      { name: { value: 'Weg' }, unit: { value: { factor: 1e-6 } } },
      { name: { value: 'Mühle' }, unit: { value: { quantity: 'acceleration' } } },
    ]);
  }
});

test('negative: what is no table of numbers is refused with its line', async () => {
  expect(await refused('a text\nof words\n')).toContain('columns of numbers below a head');
  expect(await refused(`${rows(50, (i) => `${i};1.5`)}\n3;x\n`)).toContain("line 51: x', expected a number");
  expect(await refused(`${rows(50, (i) => `${i};1.5`)}\n3;1;2;3\n`)).toContain('line 51: 4 columns');
  expect(await refusedSaying(readWhole(Uint8Array.of(0xff, 0xfe, 0x31, 0, 0x32, 0)))).toContain('Two rows at least');
  expect(await refused('x'.repeat(700_000))).toContain('lines of at most');
  expect(await refused(rows(3, () => '1\t'.repeat(2000)))).toContain('at most 1024');
});

test('law: what is written as a table is read again, number for number', async () => {
  const number = fc.double({ noNaN: true, noDefaultInfinity: true });
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(number, number), { minLength: 2, maxLength: 50 }),
      fc.constantFrom(10, 1000, 25_600, 51_200, 131_072),
      async (table, rate) => {
        const channels = [0, 1].map((index) => ({
          name: `point ${index}`,
          unit: ['g', 'mm/s'][index]!,
          values: Float64Array.from(table, (row) => row[index]!),
          sensitivity: '100 mV/g',
        }));
        const whole = await readWhole(inOnePiece(csvBytes({ channels, rate, start: '2026-11-25 17:04:32 +01:00' })));
        expect(whole.values).toEqual(channels.map(({ values }) => [...values]));
        expect(whole.recording.channels).toMatchObject(
          channels.map(({ name, sensitivity }) => ({
            name: { value: name },
            rate: { value: rate },
            sensitivity: { value: sensitivity },
          })),
        );
        expect(whole.recording.start).toMatchObject({ value: '2026-11-25 17:04:32 +01:00' });
        expect(rulesIn(whole).filter((rule) => rule !== 'unit-against-step')).toEqual([]);
      },
    ),
    { numRuns: 60 },
  );
});

test('a long table passes the borders of blocks and pieces', async () => {
  const values = Float64Array.from({ length: 100_000 }, (_, index) => Math.sin(index));
  const whole = await readWhole(inOnePiece(csvBytes({ channels: [{ name: 'a', unit: 'g', values }], rate: 51_200 })));
  expect(whole.values[0]).toEqual([...values]);
  expect(whole.longestBlock).toBeLessThanOrEqual(65_536);
  expect(whole.recording.findings).toEqual([]);
});
