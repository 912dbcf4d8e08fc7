import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Refusal } from '@soundpost/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ByteSource } from './byte-source.ts';
import { openRecording } from './formats.ts';
import { readWhole, rulesIn } from './read-whole.ts';
import { surveyed } from './survey.ts';

const folder = resolve(import.meta.dirname, '../../../../evidence/recordings');
const fixture = (name: string) => new Uint8Array(readFileSync(resolve(folder, name)));

/** Reads it or is refused in words; anything else is an error of ours. The answer is no larger than the file can hold. */
async function bounded(bytes: Uint8Array): Promise<void> {
  try {
    const { values } = await readWhole(bytes);
    // A packed file may unpack to a thousand times its size (RFC 1951), and no further.
    const most = 1100 * (bytes.length + 64);
    expect(values.reduce((sum, { length }) => sum + length, 0)).toBeLessThan(most);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(error.message.length).toBeLessThan(600);
  }
}

const beginnings: Readonly<Record<string, readonly number[]>> = {
  nothing: [],
  RIFF: [...'RIFF\x24\0\0\0WAVEfmt \x10\0\0\0'].map((each) => each.charCodeAt(0)),
  'a Universal File': [
    ...'    -1\n    58b     1     2          11        1000     0     0           0           0\n',
  ].map((each) => each.charCodeAt(0)),
  text: [...'Time,A\n0,1\n1,2\n'].map((each) => each.charCodeAt(0)),
};

test.each(Object.entries(beginnings))('law: random bytes after %s are read or refused', async (_, beginning) => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), async (bytes) => {
      await bounded(Uint8Array.of(...beginning, ...bytes));
    }),
    { numRuns: 300 },
  );
});

test('law: random characters of tables are read or refused', async () => {
  const characters = fc.constantFrom(...'0123456789,.;-+eE \t\n\rx');
  await fc.assert(
    fc.asyncProperty(fc.array(characters, { maxLength: 200 }), async (text) => {
      await bounded(new TextEncoder().encode(text.join('')));
    }),
    { numRuns: 500 },
  );
});

const fixtures = [
  'int24.wav',
  'rf64.wav',
  'extensible.wav',
  'float64.wav',
  'eight-cases-text.unv',
  'eight-cases-little.unv',
  'eight-cases-big.unv',
  'scipy-plain.mat',
  'scipy-packed.mat',
  'octave-v6.mat',
  'octave-v7.mat',
  'big-endian.mat',
];

test.each(fixtures)('law: %s with bytes written over, and cut off, is read or refused', async (name) => {
  const whole = fixture(name);
  const place = fc.nat({ max: whole.length - 1 });
  const early = fc.nat({ max: Math.min(whole.length - 1, 250) });
  const change = fc.tuple(fc.oneof(early, place), fc.oneof(fc.constantFrom(0, 255, 127, 128), fc.nat({ max: 255 })));
  await fc.assert(
    fc.asyncProperty(
      fc.array(change, { minLength: 1, maxLength: 6 }),
      place,
      fc.boolean(),
      async (changes, end, cut) => {
        const bytes = whole.slice(0, cut ? end : undefined);
        for (const [at, byte] of changes) if (at < bytes.length) bytes[at] = byte;
        await bounded(bytes);
      },
    ),
    { numRuns: 120 },
  );
});

/** A file of 10 GB that is nowhere: zeros behind a beginning, and a count of what was asked for. */
function vast(beginning: Uint8Array, size: number) {
  const asked = { largest: 0 };
  const source: ByteSource = {
    size,
    read: async (from, length) => {
      asked.largest = Math.max(asked.largest, length);
      const bytes = new Uint8Array(Math.max(0, Math.min(length, size - from)));
      if (from < beginning.length) bytes.set(beginning.subarray(from, from + bytes.length));
      return bytes;
    },
  };
  return { source, asked };
}

test('a head of 10 GB is read at once, and its samples in pieces of bounded size', async () => {
  const size = 10 * 1024 ** 3;
  const rf64 = fixture('rf64.wav');
  const view = new DataView(rf64.buffer);
  view.setBigUint64(20, BigInt(size - 8), true);
  view.setBigUint64(28, BigInt(size - 80), true);
  const { source, asked } = vast(rf64, size);
  const opened = await openRecording(source, 'vast.wav');
  expect(opened.recording.channels[0]!.samples).toBe((size - 80) / 4);
  expect(opened.recording.findings).toEqual([]);
  let blocks = 0;
  for await (const block of opened.blocks()) {
    expect(block.values[0]!.length * 2).toBeLessThanOrEqual(65_536);
    if (++blocks === 20) break;
  }
  expect(asked.largest).toBeLessThanOrEqual(512 * 1024);
});

test('10 GB without a line end, or of empty chunks, are refused and not walked through', async () => {
  const text = vast(new TextEncoder().encode('1,2\n'), 10 * 1024 ** 3);
  await expect(openRecording(text.source, 'vast.txt')).rejects.toThrow(Refusal);
  const riff = vast(Uint8Array.from([...'RIFF\0\0\0\0WAVE'].map((each) => each.charCodeAt(0))), 10 * 1024 ** 3);
  await expect(openRecording(riff.source, 'vast.wav')).rejects.toThrow('at most 4096 chunks');
  const mat = vast(fixture('octave-v6.mat').subarray(0, 128), 10 * 1024 ** 3);
  await expect(openRecording(mat.source, 'vast.mat')).rejects.toThrow('at most 20000 elements');
});

test('a file that shrinks while it is read gives what was read, and a finding', async () => {
  const bytes = fixture('int16.wav');
  let reads = 0;
  const source: ByteSource = {
    size: bytes.length,
    read: async (from, length) => (++reads > 8 ? new Uint8Array(0) : bytes.slice(from, from + length)),
  };
  const { recording } = await surveyed(await openRecording(source, 'shrinks.wav'));
  expect(recording.channels[0]!.samples).toBeLessThanOrEqual(5);
});

test('not a number and infinity in floats are counted and told', async () => {
  const bytes = fixture('float32.wav');
  bytes.set([0, 0, 0xc0, 0x7f], bytes.length - 4);
  bytes.set([0, 0, 0x80, 0x7f], bytes.length - 8);
  const whole = await readWhole(bytes);
  expect(rulesIn(whole)).toEqual(['values-are-numbers']);
  expect(whole.channels.map(({ notNumbers, samples }) => [notNumbers, samples])).toEqual([
    [1, 3],
    [1, 3],
  ]);
});
