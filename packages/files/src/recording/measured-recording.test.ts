import { expect, test } from 'vitest';
import { readYaml } from '../read-yaml.ts';
import { recordsReader } from '../records-file.ts';
import { bytesInMemory } from './byte-source.ts';
import { openRecording } from './formats.ts';
import { measuredRecording } from './measured-recording.ts';

const stated = (occasion: string) =>
  readYaml(
    new TextEncoder().encode(
      `soundpost: records\nversion: 1\nsession: { title: t }\nrecordings:\n  one:\n    file: r.csv\n    occasion: { kind: ${occasion} }\n    rate: 1000 Hz\n    channels:\n      a: { channel: 1, point: M/p, unit: g }\n`,
    ),
    'records.yaml',
    recordsReader,
  ).value.recordings[0]!;
const measured = async (value: (n: number) => number, occasion: string, most?: number) => {
  const text = `a\n${Array.from({ length: 5000 }, (_, n) => value(n).toFixed(5)).join('\n')}\n`;
  const opened = await openRecording(bytesInMemory(new TextEncoder().encode(text)), 'r.csv');
  return measuredRecording(opened, stated(occasion), undefined, undefined, most);
};
const wave = (n: number) => Math.sin(n / 6) + 0.01 * Math.sin(2.017 * n);

test('a record longer than is measured is measured from its beginning, looked through to its end, and says so', async () => {
  const told = await measured((n) => (n < 3000 ? wave(n) : 7 * wave(n)), 'running', 3000);
  expect(told.records[0]!.measures.samples).toBe(3000);
  const moments = told.records[0]!.measures.moments;
  expect(moments.known && moments.value.greatest).toBeLessThan(20);
  expect(told.findings.map(({ rule, weight }) => [rule.replace('recording/', ''), weight])).toEqual([
    ['measured-in-part', 'notes'],
  ]);
  expect((await measured(wave, 'running')).findings).toEqual([]);
});

test('a record that stands still for a while, or never moves, is in doubt; a direct voltage that rests is not', async () => {
  const doubts = async (value: (n: number) => number, occasion: string) =>
    (await measured(value, occasion)).records[0]!.doubts;
  expect(await doubts(wave, 'running')).toBeUndefined();
  expect(await doubts((n) => (n > 2000 && n < 2600 ? 0 : wave(n)), 'running')).toEqual([
    'it stands still for a stretch',
  ]);
  expect(await doubts(() => 12, 'stopped')).toEqual(['it never moves']);
  expect(await doubts(() => 12, 'at-rest')).toBeUndefined();
});

test('a contradiction names its recording', async () => {
  expect((await measured(() => 12, 'stopped')).findings.map(({ at }) => at)).toEqual(['one / a']);
});
