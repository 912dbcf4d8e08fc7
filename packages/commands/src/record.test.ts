import { expect, test } from 'vitest';
import { inMemory } from './in-memory.ts';
import { record } from './record.ts';
import { done, flowing } from './testing/house.ts';

const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, i) => row(i)).join('\n');
const told = `Sampling rate;1000 Hz
sensitivity;100 mV/g
coupling;AC
Time [s];drive end [g]
${rows(200, (i) => `${i / 250};${(Math.sin(i) * 3).toFixed(4)}`)}`;

const of = (text: string, given: object = {}, wishes = {}) =>
  done(record, { file: 'pump.csv', ...given }, inMemory({ 'pump.csv': text }), wishes);

test('what the file says, what it does not say, and where it contradicts itself', async () => {
  const outcome = await of(told);
  expect(outcome.exit).toBe(0);
  const text = flowing(outcome);
  expect(text).toMatch(/drive end 200 \? g −/);
  expect(text).toContain('sensitivity 100 mV/g; coupling AC');
  expect(text).toContain('? drive end: speed of the shaft');
  expect(text).toContain('? drive end: sampling rate (its head and its time column differ');
  expect(text).toContain('one sample in 4 was kept');
  expect(outcome.json).toMatchObject({
    file: 'pump.csv',
    channels: [
      {
        name: 'drive end',
        unit: { written: 'g', factor: 9.80665, quantity: 'acceleration' },
        rate: { unknown: [{ of: 'drive end', what: 'rate' }] },
        gain: { unknown: [{ of: 'drive end', what: 'gain' }] },
        samples: 200,
      },
    ],
    findings: [{ rule: 'recording/rate-against-time-column', weight: 'question' }],
  });
});

test('numbers stand with the decimal sign of the reader', async () => {
  const comma = flowing(await of(told, {}, { decimal: 'comma' }));
  expect(comma).toMatch(/drive end 200 \? g −3 3 0,01\d+/);
});

test('a decimal sign that cannot be told is asked for, and taken as it is stated', async () => {
  const text = rows(30, (i) => `${i},${i + 1}`);
  const asked = await of(text);
  expect(asked.exit).toBe(2);
  expect(flowing(asked)).toContain('--sign point|comma');
  const stated = await of(text, { sign: 'comma' });
  expect(stated.json).toMatchObject({ channels: [{ samples: 30 }] });
  expect(flowing(await of(text, { separator: 'colon' }))).toContain('expected tab or semicolon or comma or space');
});

test('negative: no file, and what is none, are refused', async () => {
  expect(flowing(await done(record, { file: 'pmup.csv' }, inMemory({ 'pump.csv': told })))).toContain(
    "Did you mean 'pump.csv'?",
  );
  const outcome = await of('no numbers here');
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain('pump.csv, its first lines');
});
