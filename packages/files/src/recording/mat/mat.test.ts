import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { deflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { bytesInMemory } from '../byte-source.ts';
import { openRecording } from '../formats.ts';
import { inOnePiece, readWhole, refusedSaying, rulesIn, type Whole } from '../read-whole.ts';
import { matrixCursor } from './mat-values.ts';
import { VariableWalk } from './mat-variables.ts';

const folder = resolve(import.meta.dirname, '../../../../../evidence/recordings');
const fixture = (name: string) => new Uint8Array(readFileSync(resolve(folder, name)));

type Channels = Readonly<Record<string, readonly number[]>>;
interface Held {
  readonly channels: Channels;
  readonly imaginary?: Channels;
}
const heldBy = (generator: string) =>
  JSON.parse(readFileSync(resolve(folder, generator), 'utf8')).files as Readonly<Record<string, Held>>;
const held = { ...heldBy('by-scipy.json'), ...heldBy('by-octave.json') };

function byName({ recording }: Whole, of: readonly (readonly number[])[]): Channels {
  return Object.fromEntries(recording.channels.map(({ of: name }, index) => [name, of[index]!]));
}

test.each(['scipy-plain.mat', 'scipy-packed.mat', 'octave-v6.mat', 'octave-v7.mat', 'big-endian.mat'])(
  'independent: %s holds what scipy reads in it',
  async (name) => {
    const whole = await readWhole(fixture(name));
    expect(byName(whole, whole.values)).toEqual(held[name]!.channels);
    for (const [channel, values] of Object.entries(held[name]!.imaginary ?? {})) {
      expect(byName(whole, whole.imaginary)[channel]).toEqual(values);
    }
    expect(whole.recording.findings).toEqual([]);
  },
);

test('a unit beside the numbers is theirs; a rate without a unit is asked about, as is a time without one', async () => {
  const { recording } = await readWhole(fixture('octave-v7.mat'));
  const called = (name: string) => recording.channels.find(({ of }) => of === name)!;
  expect(called('test.acceleration').unit).toMatchObject({ known: true, value: { quantity: 'acceleration' } });
  expect(called('counts').unit.known).toBe(false);
  expect(called('counts').heard.unit).toContain("test.unit = 'g'");
  expect(called('counts').rate.known).toBe(false);
  expect(called('counts').heard.rate).toContain('Fs = 8, without a unit');
  expect(called('counts').heard.rate).toContain("'t' may be its time");
  expect(recording.remarks).toContainEqual({ name: 'note', text: 'invented fan' });
  expect(recording.remarks).toContainEqual({ name: 'test.serial{1}', text: 'A-1' });
});

test('cut off at any byte: what is there, or a refusal in words', async () => {
  for (const name of ['scipy-plain.mat', 'scipy-packed.mat']) {
    const bytes = fixture(name);
    for (let length = 1; length < bytes.length; length += 37) {
      const cut = bytes.subarray(0, length);
      const ended = await readWhole(cut).then(rulesIn, (error: Error) => {
        expect(error.name).toBe('Refusal');
        return ['refused'];
      });
      // A cut between two variables cannot be seen.
      if (ended.length > 0) expect(['refused', 'length-against-file', 'values-are-numbers']).toContain(ended[0]);
    }
  }
});

test('a matrix that claims 10 GB in a small file gives what is there', async () => {
  const bytes = fixture('octave-v6.mat');
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  // The first variable: its dimensions stand behind the head, its own tag, and the element of flags.
  const at = 128 + 8 + 16 + 8;
  expect(view.getInt32(at, true)).toBe(100);
  view.setInt32(at, 1_250_000_000, true);
  const whole = await readWhole(bytes);
  expect(whole.values[0]!.length).toBe(100);
  expect(rulesIn(whole)).toContain('length-against-file');
});

test('law: a packed matrix is read alike, held or unpacked once for each column', async () => {
  const source = bytesInMemory(fixture('scipy-packed.mat'));
  const { recording } = await openRecording(source, 'packed');
  expect(recording.channels.length).toBeGreaterThan(5);
  const walk = new VariableWalk(source, 'packed', true);
  // The third variable is the matrix of three columns; each stretch begins behind its tag.
  for (let at = 128; at + 8 < source.size; ) {
    const end = at + 8 + new DataView((await source.read(at, 8)).slice().buffer).getUint32(4, true);
    await walk.walk({ from: at + 8, end, packed: true });
    at = end;
  }
  const variable = walk.numbers.find(({ path }) => path === 'columns')!;
  const matrix = { variable, channels: 3, samples: 10, interleaved: false };
  const read = async (most?: number) => {
    const cursor = matrixCursor(source, matrix, variable.real, true, most);
    const pieces = [await cursor.next(4), await cursor.next(6)];
    await cursor.close();
    return [0, 1, 2].map((column) => pieces.flatMap((piece) => [...piece[column]!]));
  };
  const { channels } = held['scipy-packed.mat']!;
  const expected = [1, 2, 3].map((column) => channels[`columns, column ${column}`]);
  expect(await read()).toEqual(expected);
  expect(await read(0)).toEqual(expected);
});

test('negative: a packed matrix that would be unpacked a thousand times over gigabytes is refused', async () => {
  const words = Uint32Array.of(14, 0xffff_ff00, 6, 8, 6, 0, 5, 8, 500_000, 1000, 0x1_0001, 0x61, 9, 4_000_000_000);
  const packed = deflateSync(new Uint8Array(words.buffer));
  const head = fixture('octave-v6.mat').subarray(0, 128);
  const tag = new Uint8Array(Uint32Array.of(15, packed.length).buffer);
  const sentence = await refusedSaying(readWhole(inOnePiece([head, tag, packed])));
  expect(sentence).toContain('a packed matrix of 1000 columns and 500000 rows');
});

test('negative: other versions are refused by name', async () => {
  const bytes = fixture('octave-v6.mat');
  bytes[124] = 0;
  bytes[125] = 3;
  expect(await refusedSaying(readWhole(bytes))).toContain("MAT version 3.0', expected a MAT file of version 5");
  const hdf = Uint8Array.of(0x89, 0x48, 0x44, 0x46, 13, 10, 26, 10, ...new Uint8Array(600));
  expect(await refusedSaying(readWhole(hdf))).toContain('HDF5');
  const four = new Uint8Array(22 + 80);
  new DataView(four.buffer).setUint32(4, 10, true);
  new DataView(four.buffer).setUint32(8, 1, true);
  four.set([2, 0, 0, 0, 0x61, 0], 16);
  expect(await refusedSaying(readWhole(four))).toContain('MAT version 4');
  const none = fixture('octave-v6.mat').subarray(0, 128);
  expect(await refusedSaying(readWhole(none))).toContain('no variable of more than one number');
});
