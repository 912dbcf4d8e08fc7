import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { showMeasure } from '@soundpost/core';
import { expect, test } from 'vitest';
import { readWhole, rulesIn } from './read-whole.ts';

/** Real recordings of open data sets, where their folder was laid beside the project. */
const folder = resolve(import.meta.dirname, '../../../../../shared/recordings');
const absent = 'the folder with the real recordings is not beside the project';
const recorded = (name: string) => {
  const path = resolve(folder, name);
  return existsSync(path) ? new Uint8Array(readFileSync(path)) : undefined;
};

test.for(['drop-test-016.txt', 'drop-test-017.txt'])(
  '%s: rate, units and lengths are as its head says',
  async (name, { skip }) => {
    const bytes = recorded(name);
    if (bytes === undefined) return skip(absent);
    const whole = await readWhole(bytes);
    const [base, board, other] = whole.recording.channels;
    expect(base).toMatchObject({
      rate: { value: 51_200 },
      unit: { value: { quantity: 'acceleration' } },
      samples: 51_200,
    });
    expect(board!.samples).toBe(51_200);
    expect(other!.samples).toBe(5);
    // Its columns of five values are of another time. Its owners call 017 bad: a data acquisition error.
    expect(rulesIn(whole)).toEqual(name.includes('017') ? ['one-start', 'settled'] : ['one-start']);
  },
);

test('the bad drop test falls from 140 km/s² on both channels, and is told to', async ({ skip }) => {
  const bytes = recorded('drop-test-017.txt');
  if (bytes === undefined) return skip(absent);
  const { recording } = await readWhole(bytes);
  const told = recording.findings.filter(({ rule }) => rule === 'recording/settled');
  expect(told.map(({ at }) => at)).toEqual(['Acceleration_0', 'Acceleration_1']);
  // 0.29 s by a straight line through the logarithm of the first and the last tenth of the record (numpy).
  for (const each of told) expect(showMeasure(each.found)).toMatch(/in about 29\d ms to 1\/e/);
});

test.for([
  ['shaker-a.txt', 16, 3200],
  ['shaker-b.txt', 256, 200],
] as const)(
  '%s: its increment, count and time column do not agree, and one sample in %s was kept',
  async ([name, kept, rate], { skip }) => {
    const bytes = recorded(name);
    if (bytes === undefined) return skip(absent);
    const whole = await readWhole(bytes);
    expect(rulesIn(whole)).toEqual(['length-against-file', 'rate-against-time-column']);
    const told = whole.recording.findings.find(({ rule }) => rule.endsWith('time-column'))!;
    expect(showMeasure(told.because)).toContain(`one sample in ${kept}`);
    expect(showMeasure(told.found)).toContain(`${rate} Hz`);
    expect(whole.recording.channels.every(({ rate: stated }) => !stated.known)).toBe(true);
    // Volts and g mean one thing; pounds are a force or a mass.
    expect(whole.recording.channels.map(({ unit }) => unit.known)).toEqual([true, false, true]);
  },
);
