import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { questionsOf } from '@soundpost/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inOnePiece, readWhole, refusedSaying, rulesIn } from '../read-whole.ts';
import { type WavForm, wavBytes } from './write-wav.ts';

const folder = resolve(import.meta.dirname, '../../../../../evidence/recordings');
const fixture = (name: string) => new Uint8Array(readFileSync(resolve(folder, name)));

interface Held {
  readonly rate: number;
  readonly channels: readonly (readonly number[])[];
}
const { files } = JSON.parse(readFileSync(resolve(folder, 'by-scipy.json'), 'utf8')) as {
  files: Readonly<Record<string, Held>>;
};
const names = Object.keys(files).filter((each) => each.endsWith('.wav'));

test.each(names)('independent: %s holds the values its writer says it holds', async (name) => {
  const { rate, channels } = files[name]!;
  const { values, recording } = await readWhole(fixture(name));
  expect(values).toEqual(channels);
  expect(recording.channels.map((each) => each.rate)).toMatchObject(channels.map(() => ({ known: true, value: rate })));
  expect(recording.findings).toEqual([]);
});

test.each([
  ['int16', 'int16.wav'],
  ['int24', 'int24.wav'],
  ['int32', 'int32.wav'],
] as const)(
  'independent: what is written as %s is byte for byte what the wave module of Python writes',
  (form, name) => {
    const { rate, channels } = files[name]!;
    const written = inOnePiece(wavBytes({ channels: channels.map((each) => Float64Array.from(each)), rate, form }));
    expect(written).toEqual(fixture(name));
  },
);

/** Header of 1 channel, 25,600 Hz, 24 bits, 1 s; from memory of the layout, computed by hand. */
const header =
  '52 49 46 46 24 2c 01 00 57 41 56 45 66 6d 74 20 10 00 00 00 01 00 01 00 00 64 00 00 00 2c 01 00 03 00 18 00 64 61 74 61 00 2c 01 00';

test('printed: the header of a second at 25,600 Hz in 24 bits', () => {
  const [first] = wavBytes({ channels: [new Float64Array(25_600)], rate: 25_600, form: 'int24' });
  expect([...first!].map((byte) => byte.toString(16).padStart(2, '0')).join(' ')).toBe(header);
});

const steps: Readonly<Record<WavForm, number>> = {
  int16: 2 ** -16,
  int24: 2 ** -24,
  int32: 2 ** -32,
  float32: 2 ** -25,
  float64: 0,
};

test.each(Object.keys(steps) as WavForm[])('law: what is written as %s is read within half a step', async (form) => {
  const samples = fc.double({ min: -1, max: 1 - 2 ** -14, noNaN: true });
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(samples, samples), { minLength: 1, maxLength: 40 }), async (frames) => {
      const channels = [0, 1].map((index) => Float64Array.from(frames, (frame) => frame[index]!));
      const { values, recording } = await readWhole(inOnePiece(wavBytes({ channels, rate: 48_000, form })));
      channels.forEach((channel, index) => {
        channel.forEach((value, at) => {
          expect(Math.abs(values[index]![at]! - value)).toBeLessThanOrEqual(steps[form] * (1 + 1e-9));
        });
      });
      expect(recording.findings).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

const plain = () =>
  inOnePiece(
    wavBytes({ channels: [Float64Array.from({ length: 99 }, (_, i) => Math.sin(i))], rate: 8000, form: 'int16' }),
  );

function changed(at: number, ...bytes: readonly number[]): Uint8Array {
  const wav = plain();
  wav.set(bytes, at);
  return wav;
}

test('what a WAV does not say is asked for, and nothing is filled in', async () => {
  const { recording } = await readWhole(plain());
  expect(questionsOf(recording).map(({ what }) => what.split(/[ :(,]/, 1)[0])).toEqual([
    'name',
    'unit',
    'sensitivity',
    'gain',
    'coupling',
    'speed',
    'date',
  ]);
});

test('names, remarks and the start that stand in side chunks', async () => {
  const ascii = (text: string, length = text.length) =>
    Uint8Array.from({ length }, (_, index) => (index < text.length ? text.charCodeAt(index) : 0));
  const chunk = (name: string, content: Uint8Array) =>
    inOnePiece([ascii(name), new Uint8Array(Uint32Array.of(content.length).buffer), content]);
  const info = chunk('LIST', inOnePiece([ascii('INFO'), chunk('ICMT', ascii('invented fan', 12))]));
  const extension = new Uint8Array(602);
  extension.set(ascii('drive end'), 0);
  extension.set(ascii('2026-11-2517:04:32'), 320);
  const bytes = inOnePiece([plain(), info, chunk('bext', extension)]);
  new DataView(bytes.buffer).setUint32(4, bytes.length - 8, true);
  const { recording } = await readWhole(bytes);
  expect(recording.remarks).toEqual([
    { name: 'ICMT', text: 'invented fan' },
    { name: 'description', text: 'drive end' },
  ]);
  expect(recording.start).toMatchObject({ value: '2026-11-25 17:04:32' });
  expect(recording.findings).toEqual([]);
});

test('a file that was cut off is read as far as it goes, and that is told', async () => {
  const whole = await readWhole(plain().subarray(0, 44 + 50));
  expect(whole.values[0]).toHaveLength(25);
  expect(rulesIn(whole)).toEqual(['length-against-file']);
});

test('a claim of 4 GB and one of nothing are held against what is there', async () => {
  const giant = await readWhole(changed(40, 0xf0, 0xff, 0xff, 0xff));
  expect(giant.values[0]).toHaveLength(99);
  expect(rulesIn(giant)).toContain('length-against-file');
  const unclosed = await readWhole(
    inOnePiece([changed(4, 0, 0, 0, 0).subarray(0, 40), new Uint8Array(4), plain().subarray(44)]),
  );
  expect(unclosed.values[0]).toHaveLength(99);
  expect(rulesIn(unclosed)).toContain('length-against-file');
});

test('what was added behind the samples is told, and is not taken for samples', async () => {
  const whole = await readWhole(inOnePiece([plain(), new Uint8Array(100_000)]));
  expect(whole.values[0]).toHaveLength(99);
  expect(rulesIn(whole)).toEqual(['length-against-file']);
});

test('a RF64 of 10 GB in a file of a hundred bytes gives what is there', async () => {
  const wav = fixture('rf64.wav');
  new DataView(wav.buffer).setBigUint64(28, 10_000_000_000n, true);
  const whole = await readWhole(wav);
  expect(whole.values[0]).toHaveLength(5);
  expect(rulesIn(whole)).toEqual(['length-against-file']);
});

test('a rate that does not agree with the bytes a second is a contradiction; a rate of 0 is unknown', async () => {
  expect(rulesIn(await readWhole(changed(24, 0x80, 0x3e)))).toEqual(['head-against-itself']);
  const zero = await readWhole(changed(24, 0, 0, 0, 0, 0, 0, 0, 0));
  expect(zero.recording.channels[0]!.rate.known).toBe(false);
});

test('negative: other forms are refused by name', async () => {
  expect(await refusedSaying(readWhole(changed(20, 7)))).toContain('format 7 of 16 bits');
  expect(await refusedSaying(readWhole(changed(34, 8)))).toContain('format 1 of 8 bits');
  expect(await refusedSaying(readWhole(changed(22, 0)))).toContain('0 channels');
  expect(await refusedSaying(readWhole(changed(22, 0xff, 0xff)))).toContain('65535 channels');
  expect(await refusedSaying(readWhole(changed(36, 0x78)))).toContain("a chunk 'data'");
  expect(await refusedSaying(readWhole(changed(3, 0x58)))).toContain('little-endian');
  expect(await refusedSaying(readWhole(changed(8, 0x41)))).toContain("expected 'WAVE'");
  expect(await refusedSaying(readWhole(plain().subarray(0, 20)))).toContain("'fmt '");
});

test('a hundred channels are read in blocks of bounded size', async () => {
  const channels = Array.from({ length: 100 }, (_, index) => new Float64Array(2000).fill(index / 128));
  const whole = await readWhole(inOnePiece(wavBytes({ channels, rate: 1000, form: 'int24' })));
  expect(whole.values.map((each) => each[1999])).toEqual(channels.map((each) => each[0]));
  expect(whole.longestBlock * 100).toBeLessThanOrEqual(65_536);
});
