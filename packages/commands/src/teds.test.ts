import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { teds } from './teds.ts';
import { checkout, done, flowing, world } from './testing/house.ts';

const layoutPath = 'examples/teds/invented-layout.yaml';
const invented = readFileSync(resolve(checkout, layoutPath), 'utf8');
const files = () => world({ [layoutPath]: invented });

/** The accelerometer stream of a public library: see the evidence of the room. */
const stream = '00 00 00 00 00 00 00 00 64 70 1E 0D 00 00 00 00 00 00 00 00 00 00 06'.split(' ');

const basic = ['manufacturer=40', 'model=7', 'version-letter=B', 'version-number=3', 'serial=1234'];
const values = [
  ...basic,
  'field=pressure',
  'sensitivity=0.05',
  'reference-temperature=23',
  'has-grid=1',
  'grid-depth=2.5',
  'calibration-date=2026-03-01',
  'calibration-initials=unknown',
];

interface Read {
  readonly bytes: string;
  readonly layout: { readonly origin: string; readonly edition: string };
  readonly fields: readonly { readonly name: string; readonly value: unknown; readonly unit?: string }[];
}

test('printed: the published stream reads 49.03 V/g within 0.01, with the layout said to be built in', async () => {
  const { exit, json } = await done(teds, { words: stream, encode: false });
  const { fields, layout } = json as Read;
  const sensitivity = fields.find(({ name }) => name === 'sensitivity')!;
  expect((sensitivity.value as number) * 9.80665).toBeCloseTo(49.03, 2);
  expect(sensitivity.unit).toBe('V/(m/s²)');
  expect(layout.origin).toMatch(/built in, not read in the standard/);
  expect(exit).toBe(0);
});

test('law: what is written in a transcribed layout is read in it, and the layout is marked as the user’s', async () => {
  const written = await done(teds, { words: values, encode: true, layout: layoutPath }, files());
  const { bytes } = written.json as Read;
  const read = await done(teds, { words: [bytes.replaceAll(' ', '')], encode: false, layout: layoutPath }, files());
  const { fields, layout } = read.json as Read;
  const told = Object.fromEntries(fields.map(({ name, value }) => [name, value]));
  expect(told).toMatchObject({ serial: 1234, field: 'pressure', 'grid-depth': 2.5, 'calibration-date': '2026-03-01' });
  // The file states ±0.02 %.
  expect(Math.abs((told.sensitivity as number) / 0.05 - 1)).toBeLessThan(0.0002);
  expect(told['calibration-initials']).toHaveProperty('unknown');
  expect(layout).toEqual({
    origin: 'transcribed by the user, edition as stated',
    edition: expect.stringMatching(/^invented/),
  });
  expect(flowing(read)).toContain('transcribed by the user, edition as stated');
});

test('without a layout the microphone is read to its name, and how to state the layout is said', async () => {
  const bytes = ((await done(teds, { words: values, encode: true, layout: layoutPath }, files())).json as Read).bytes;
  const { json, ...outcome } = await done(teds, { words: [bytes], encode: false });
  expect((json as Read).fields.at(-1)!.name).toBe('template');
  expect(flowing(outcome)).toContain('give it with --layout');
});

test('negative: what cannot be read or written is refused in words', async () => {
  const said = async (words: readonly string[], given: object) => {
    const outcome = await done(teds, { words, encode: false, ...given }, files());
    expect(outcome.exit).toBe(2);
    return flowing(outcome);
  };
  expect(await said(stream, { layout: layoutPath })).toContain('bytes of template 25');
  expect(await said(['xyz'], {})).toContain('is no digit');
  expect(await said(stream, { layout: 'nowhere.yaml' })).toContain('nowhere.yaml');
  const encode = { encode: true, layout: layoutPath };
  expect(await said(values.slice(1), encode)).toContain("'manufacturer', stated or unknown");
  expect(await said(['sensitivty=1'], encode)).toContain("Did you mean 'sensitivity'?");
  const loud = values.map((each) => each.replace('=0.05', '=5e5'));
  expect(await said(loud, encode)).toContain("'sensitivity=500000', expected a value from 0.000001 to 2410");
  expect(await said([...values, 'serial=1'], encode)).toContain("'serial=1', expected each name once");
  expect(await said([...values, 'template=25'], encode)).toContain('template=27');
  expect(await said(['serial'], encode)).toContain('NAME=VALUE');
  expect(await said(basic, { encode: true })).toContain('template=25');
  expect(await said([...basic, 'template=27'], { encode: true })).toContain('--layout FILE');
});

test('negative: a slip in a layout is told with its line', async () => {
  const slip = world({ [layoutPath]: invented.replace('bits: 15', 'bits: 14') });
  const outcome = await done(teds, { words: stream, encode: false, layout: layoutPath }, slip);
  expect(outcome.exit).toBe(2);
  const line = invented.split('\n').findIndex((each) => each.includes('calibration-initials')) + 1;
  expect(flowing(outcome)).toContain(`${layoutPath}:${line}:5: fields/7: read '14 bits', expected 5 to 50 bits`);
});
