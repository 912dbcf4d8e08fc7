import { expect, test } from 'vitest';
import { comparison, design } from '../../packages/core/src/index.ts';
import {
  bytesInMemory,
  measuredRecording,
  openRecording,
  readYaml,
  recordsReader,
} from '../../packages/files/src/index.ts';
import { plantOf } from '../reading.ts';
import { demoPlant } from './plant-with.ts';

/**
 * Negative: item 9 of the list, records as they arrive. What neither the recording nor the records file says is asked;
 * where both speak and differ it is asked; a check that hangs on it cannot tell, and never fails or meets.
 */
const point = 'P-301/pump-drive-end-horizontal';

function recordsFile(answers: string, occasion = '{ kind: running }'): string {
  return [
    'soundpost: records',
    'version: 1',
    'session: { title: bad input }',
    'recordings:',
    '  run:',
    '    file: run.csv',
    `    occasion: ${occasion}`,
    '    channels:',
    `      one: { channel: 1, point: ${point}${answers} }`,
    '',
  ].join('\n');
}

/** A text of one column of values, and what is made of it with these answers. */
async function measured(head: string, values: readonly number[], answers: string, occasion?: string) {
  const bytes = new TextEncoder().encode(`${head}\n${values.join('\n')}\n`);
  const session = readYaml(
    new TextEncoder().encode(recordsFile(answers, occasion)),
    'records.yaml',
    recordsReader,
  ).value;
  return measuredRecording(await openRecording(bytesInMemory(bytes), 'run.csv'), session.recordings[0]!);
}

const sine = Array.from({ length: 4096 }, (_, n) => Number((0.5 * Math.sin(n / 7)).toFixed(6)));
const demo = design(plantOf(demoPlant), 1);

const verdicts = async (told: ReturnType<typeof measured>) =>
  new Map(comparison(demo, (await told).records).results.map((each) => [each.check, each.verdict]));

test('a record without rate, unit, gain and coupling is asked about, and nothing is judged of it', async () => {
  const told = await measured('acceleration', sine, '');
  const asked = told.questions.map(({ what }) => what).join('; ');
  for (const what of ['sampling rate', 'unit', 'gain', 'coupling']) expect(asked).toContain(what);
  const judged = [...(await verdicts(Promise.resolve(told))).values()];
  expect(judged.length).toBeGreaterThan(3);
  expect(new Set(judged)).toEqual(new Set(['cannot tell']));
});

test('a clipped record fails, though its scale is not known', async () => {
  const cut = sine.map((each) => Math.max(-0.3, Math.min(0.3, each)));
  const told = await measured('acceleration', cut, '');
  const withRate = await measured('acceleration', cut, '', '{ kind: running }\n    rate: 5120 Hz');
  expect((await verdicts(Promise.resolve(told))).get('clipping')).toBe('cannot tell');
  expect((await verdicts(Promise.resolve(withRate))).get('clipping')).toBe('fails');
});

test('an AC-coupled record cannot tell a bias', async () => {
  const told = measured('x', sine, ', unit: V, gain: 1, coupling: alternating', '{ kind: at-rest }\n    rate: 5120 Hz');
  expect((await verdicts(told)).get('bias')).toBe('cannot tell');
});

test('a unit in the head that a person contradicts with another scale is not taken silently', async () => {
  const told = await measured(
    'sampling rate: 5120 Hz\nacceleration [g]',
    sine,
    '',
    '{ kind: running }\n    rate: 51200 Hz',
  );
  const rates = told.findings.filter(({ rule }) => rule === 'recording/answer-differs');
  const asked = told.questions.map(({ what }) => what).join('; ');
  expect(rates.length > 0 || /rate/.test(asked)).toBe(true);
});

test('a recording whose start has no time zone is asked for it', async () => {
  const told = await measured('acceleration', sine, '');
  expect(told.questions.map(({ what }) => what).join('; ')).toMatch(/time zone/);
});
