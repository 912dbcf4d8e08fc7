import { expect, test } from 'vitest';
import { bytesOfBlob } from './blob-source.ts';
import { bytesInMemory } from './byte-source.ts';
import { openRecording } from './formats.ts';
import { wavBytes } from './wav/write-wav.ts';

const wav = new Uint8Array(
  [
    ...wavBytes({
      channels: [Float64Array.from({ length: 9000 }, (_, n) => Math.sin(n / 7))],
      rate: 1000,
      form: 'float32',
    }),
  ].flatMap((piece) => [...piece]),
);

test('law: a blob gives the bytes that memory gives, also past its end', async () => {
  const [blob, memory] = [bytesOfBlob(new Blob([wav])), bytesInMemory(wav)];
  expect(blob.size).toBe(memory.size);
  for (const [from, length] of [
    [0, 44],
    [40, 10],
    [wav.length - 3, 50],
    [wav.length + 5, 4],
  ] as const) {
    expect(await blob.read(from, length)).toEqual(await memory.read(from, length));
  }
});

test('a recording is read out of a blob, and no piece asked of it is as long as the whole', async () => {
  const blob = new Blob([wav]);
  let longest = 0;
  const watched = {
    size: blob.size,
    slice: (from: number, to: number) => {
      longest = Math.max(longest, to - from);
      return blob.slice(from, to);
    },
  };
  const opened = await openRecording(bytesOfBlob(watched), 'made.wav');
  let count = 0;
  for await (const { values } of opened.blocks()) count += values[0]!.length;
  expect(count).toBe(9000);
  expect(longest).toBeLessThanOrEqual(256 * 1024);
});
