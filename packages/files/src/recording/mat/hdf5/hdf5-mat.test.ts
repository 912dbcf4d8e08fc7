import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Refusal } from '@soundpost/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ByteSource, bytesInMemory } from '../../byte-source.ts';
import { openRecording } from '../../formats.ts';
import { readWhole, refusedSaying } from '../../read-whole.ts';
import { withoutWaiting } from './hdf5-file.ts';
import { asked, hdf5Library } from './hdf5-library.ts';

const folder = resolve(import.meta.dirname, '../../../../../../evidence/recordings-hdf5');
const fixture = (name: string) => new Uint8Array(readFileSync(resolve(folder, name)));

type Channels = Readonly<Record<string, readonly number[]>>;
interface Held {
  readonly channels: Channels;
  readonly imaginary: Channels;
}
const held = JSON.parse(readFileSync(resolve(folder, 'by-h5py.json'), 'utf8')).files as Readonly<Record<string, Held>>;

test.each(['plain.mat', 'packed.mat'])('independent: %s holds what h5py reads in it', async (name) => {
  const whole = await readWhole(fixture(name));
  const byName = (of: readonly (readonly number[])[]) =>
    Object.fromEntries(whole.recording.channels.map(({ of: called }, index) => [called, of[index]!]));
  expect(byName(whole.values)).toEqual(held[name]!.channels);
  expect(byName(whole.imaginary)).toMatchObject(held[name]!.imaginary);
  expect(whole.recording.findings).toEqual([]);
  expect(whole.recording.form).toBe('MAT version 7.3, HDF5');
});

test('the questions are those of the older versions: a unit beside the numbers is theirs, a rate without a unit is asked about', async () => {
  const { recording } = await readWhole(fixture('packed.mat'));
  const called = (name: string) => recording.channels.find(({ of }) => of === name)!;
  expect(called('test.acceleration').unit).toMatchObject({ known: true, value: { quantity: 'acceleration' } });
  expect(called('vibration').unit.known).toBe(false);
  expect(called('vibration').heard.unit).toContain("test.unit = 'g'");
  expect(called('vibration').heard.rate).toContain('Fs = 8, without a unit');
  expect(called('vibration').heard.rate).toContain("'t' may be its time");
  expect(called('complex').complex).toBe(true);
  expect(recording.remarks).toContainEqual({ name: 'head', text: 'MATLAB 7.3 MAT-file, laid out by h5py' });
  expect(recording.remarks).toContainEqual({ name: 'note', text: 'invented fan, 20 µm' });
  expect(recording.remarks).toContainEqual({ name: 'test.serial{1}', text: 'A-1' });
  expect(recording.remarks).toContainEqual({ name: 'handle', text: 'not read' });
});

test('law: read by waiting or not, the same; beyond what may be held it is refused with the way out', async () => {
  const bytes = fixture('packed.mat');
  const waiting: ByteSource = { size: bytes.length, read: bytesInMemory(bytes).read };
  const first = async (source: ByteSource) => {
    const opened = await openRecording(source, 'recording.mat');
    for await (const block of opened.blocks()) return block;
    return undefined;
  };
  expect(await first(waiting)).toEqual(await first(bytesInMemory(bytes)));
  const sentence = await refusedSaying(withoutWaiting(waiting, 'recording.mat', 1024));
  expect(sentence).toContain('Read it with the command line');
});

test('what can be read in pieces is: no more than a piece is asked for at once, and never the whole', async () => {
  const bytes = fixture('long.mat');
  const source = bytesInMemory(bytes);
  let [largest, all] = [0, 0];
  const watched: ByteSource = {
    ...source,
    readNow: (from, length) => {
      largest = Math.max(largest, length);
      all += length;
      return source.readNow!(from, length);
    },
  };
  const opened = await openRecording(watched, 'recording.mat');
  expect(all).toBeLessThan(bytes.length / 4);
  let samples = 0;
  for await (const { from, values } of opened.blocks()) {
    expect(from).toBe(samples);
    for (const [index, each] of values[0]!.entries()) {
      if (each !== (from + index) % 1000) throw new Error(`sample ${from + index} is ${each}`);
    }
    expect(values[0]!.length).toBeLessThanOrEqual(65_536);
    samples += values[0]!.length;
  }
  expect(samples).toBe(200_001);
  expect(largest).toBeLessThan(bytes.length / 2);
});

/** Reads it or is refused in words; the answer is no larger than a packed file of this size can hold. */
async function bounded(bytes: Uint8Array): Promise<'read' | 'refused'> {
  try {
    const { values } = await readWhole(bytes);
    expect(values.reduce((sum, { length }) => sum + length, 0)).toBeLessThan(1100 * (bytes.length + 64));
    return 'read';
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(error.message.length).toBeLessThan(600);
    return 'refused';
  }
}

test.each(['plain.mat', 'packed.mat'])('cut off at sixty places, %s is refused in words', async (name) => {
  const bytes = fixture(name);
  for (let index = 1; index <= 60; index++) {
    expect(await bounded(bytes.slice(0, Math.floor((bytes.length * index) / 61)))).toBe('refused');
  }
  expect(await bounded(bytes)).toBe('read');
});

test.each(['plain.mat', 'packed.mat'])('law: %s with bytes written over is read or refused', async (name) => {
  const whole = fixture(name);
  const place = fc.nat({ max: whole.length - 1 });
  const early = fc.integer({ min: 512, max: 6000 });
  const change = fc.tuple(fc.oneof(early, place), fc.oneof(fc.constantFrom(0, 255, 127, 128), fc.nat({ max: 255 })));
  await fc.assert(
    fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 6 }), async (changes) => {
      const bytes = whole.slice();
      for (const [at, byte] of changes) bytes[at] = byte;
      await bounded(bytes);
    }),
    { numRuns: 100 },
  );
});

test.each([
  ['giant.mat', 'no more than a file of'],
  ['bomb.mat', 'no more than a file of'],
  ['elsewhere.mat', '1 to 1024 channels'],
])('negative: %s is refused', async (name, words) => {
  expect(await refusedSaying(readWhole(fixture(name)))).toContain(words);
});

test('links in circles end', async () => {
  const { recording, values } = await readWhole(fixture('circle.mat'));
  expect(recording.channels[0]!.of).toBe('group.data');
  expect(values[0]).toEqual([1, 2, 3]);
  expect(recording.channels.length).toBe(1);
  expect(recording.remarks).toContainEqual({ name: 'group.again', text: 'not read' });
  expect(recording.remarks).toContainEqual({ name: 'group.cell{1}', text: 'not read' });
});

test('numbers that stand in another file are not fetched from there', async () => {
  const { values, recording } = await readWhole(fixture('outside.mat'));
  expect(values[0]).toEqual([]);
  expect(recording.findings.map(({ rule }) => rule)).toContain('recording/length-against-file');
});

test('a damaged chunk ends its channel, with a finding', async () => {
  const whole = await readWhole(fixture('damaged.mat'));
  expect(whole.recording.findings.map(({ rule }) => rule)).toContain('recording/length-against-file');
});

test('a library that has stopped within itself answers no more, and is replaced', async () => {
  const first = await hdf5Library('recording.mat');
  const trap = () => {
    throw Object.assign(new Error('memory access out of bounds'), { name: 'RuntimeError' });
  };
  expect(() => asked(first, 'recording.mat', trap)).toThrow('on which the reader of HDF5 stopped');
  expect(() => asked(first, 'recording.mat', () => 1)).toThrow(Refusal);
  expect((await readWhole(fixture('circle.mat'))).values[0]).toEqual([1, 2, 3]);
  expect(await hdf5Library('recording.mat')).not.toBe(first);
});

test('negative: only the head, or no HDF5 file behind it', async () => {
  const bytes = fixture('plain.mat');
  expect(await bounded(bytes.slice(0, 512))).toBe('refused');
  const text = bytes.slice(0, 2048).fill(0x20, 128);
  expect(await refusedSaying(readWhole(text))).toContain('no HDF5 file');
  expect(await refusedSaying(readWhole(bytes.slice(512)))).toContain('without the head of a MAT file');
});
