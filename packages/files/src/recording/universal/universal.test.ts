import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inOnePiece, readWhole, refusedSaying, rulesIn } from '../read-whole.ts';
import { type UniversalForm, universalBytes, type WrittenFunction } from './write-universal.ts';

const folder = resolve(import.meta.dirname, '../../../../../evidence/recordings');
const fixture = (word: string) => new Uint8Array(readFileSync(resolve(folder, `eight-cases-${word}.unv`)));
const held = JSON.parse(readFileSync(resolve(folder, 'by-scipy.json'), 'utf8')).files['eight cases'] as Readonly<
  Record<'along' | 'real' | 'imaginary', readonly number[]>
>;
const single = (values: readonly number[]) => values.map(Math.fround);

test.each(['text', 'little', 'big'])(
  'independent: the eight cases of the format, %s, as Python wrote them',
  async (word) => {
    const { values, imaginary, along, recording } = await readWhole(fixture(word));
    // Text holds every digit of these values; binary holds what its precision does.
    const kept = (index: number, of: readonly number[]) => (word === 'text' || index >= 4 ? of : single(of));
    for (let index = 0; index < 8; index++) {
      expect(values[index], `case ${index + 1}`).toEqual(kept(index, held.real));
      expect(imaginary[index]).toEqual([2, 3, 6, 7].includes(index) ? kept(index, held.imaginary) : []);
      expect(along[index]).toEqual(index % 2 === 1 ? held.along : []);
    }
    expect(recording.findings).toEqual([]);
  },
);

test('what a dataset says of its channel', async () => {
  const { recording } = await readWhole(fixture('little'));
  const [even, uneven] = recording.channels;
  expect(even).toMatchObject({
    name: { value: 'Case 1, node 12 −Z' },
    rate: { value: 64 },
    unit: { value: { quantity: 'acceleration', factor: 1 } },
    abscissa: { of: 'time', even: true, first: 0.5 },
    sensitivity: { known: false },
  });
  expect(recording.start).toMatchObject({ value: '25-Nov-26 17:04:32' });
  // Times one beside the other give a rate where they are even; these are not.
  expect(uneven).toMatchObject({ rate: { known: false }, heard: { rate: 'its times are not even' } });
});

const part = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const written = fc
  .record({
    complex: fc.boolean(),
    even: fc.boolean(),
    double: fc.boolean(),
    rows: fc.array(fc.tuple(part, part, part), { minLength: 1, maxLength: 30 }),
  })
  .map(({ complex, even, double, rows }): WrittenFunction => {
    const column = (index: 0 | 1 | 2) => Float64Array.from(rows, (row) => row[index]);
    return {
      name: 'Rehearsed pump',
      functionType: 1,
      node: 7,
      direction: 2,
      abscissa: { specificType: 17, label: 'Time', unit: 's' },
      ordinate: { specificType: 12, label: 'Acceleration', unit: 'm/s^2' },
      along: even ? { first: 0, step: 1 / 1024 } : column(2),
      values: column(0),
      ...(complex ? { imaginary: column(1) } : {}),
      precision: double ? 'double' : 'single',
    };
  });

/** Digits of the format: six of a single, thirteen of a double, in text; all a binary number has, else. */
function keeps(form: UniversalForm, double: boolean): (value: number) => number {
  if (form === 'text') return (value) => Number(value.toExponential(double ? 12 : 5));
  return double ? (value) => value : Math.fround;
}

test.each(['text', 'little-endian', 'big-endian'] as const)(
  'law: what is written as %s is read again',
  async (form) => {
    await fc.assert(
      fc.asyncProperty(fc.array(written, { minLength: 1, maxLength: 8 }), async (functions) => {
        const whole = await readWhole(inOnePiece(universalBytes(functions, form)));
        functions.forEach((each, index) => {
          const keep = keeps(form, each.precision === 'double');
          expect(whole.values[index]).toEqual([...each.values].map((value) => keep(value)));
          expect(whole.imaginary[index]).toEqual([...(each.imaginary ?? [])].map((value) => keep(value)));
          const along = each.along instanceof Float64Array ? [...each.along] : [];
          expect(whole.along[index]).toEqual(along.map((value) => keeps(form, false)(value)));
        });
        expect(rulesIn(whole).filter((rule) => !rule.startsWith('times'))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  },
);

const one = (form: UniversalForm, change: Partial<WrittenFunction> = {}) =>
  inOnePiece(
    universalBytes(
      [
        {
          name: 'Fan',
          functionType: 1,
          abscissa: { specificType: 17, label: 'Time', unit: 's' },
          ordinate: { specificType: 12, label: '', unit: 'm/s^2' },
          along: { first: 0, step: 0.001 },
          values: Float64Array.from({ length: 400 }, (_, index) => Math.sin(index)),
          precision: 'double',
          ...change,
        },
      ],
      form,
    ),
  );

test('a long function passes the borders of blocks and pieces', async () => {
  const values = Float64Array.from({ length: 150_001 }, (_, index) => index / 8);
  for (const form of ['text', 'big-endian'] as const) {
    const whole = await readWhole(one(form, { values }));
    expect(whole.values[0]).toEqual([...values]);
    expect(whole.longestBlock).toBeLessThanOrEqual(65_536);
  }
});

test('lines that end in CRLF, binary too, and datasets of other numbers between', async () => {
  const other = '    -1\r\n   151\r\nanything\r\n    -1\r\n';
  const head = new TextDecoder('latin1').decode(one('little-endian')).split('\n').slice(0, 13).join('\r\n');
  const body = one('little-endian').subarray(-(400 * 8 + '\n    -1\n'.length));
  const whole = await readWhole(inOnePiece([new TextEncoder().encode(`${other}${head}\r\n`), body]));
  expect(whole.values[0]).toHaveLength(400);
  expect(whole.values[0]![1]).toBe(Math.sin(1));
  expect(whole.recording.remarks).toContainEqual({ name: 'datasets passed over', text: '151' });
});

test('a unit that is none of the kind the channel is said to be of', async () => {
  const whole = await readWhole(one('text', { ordinate: { specificType: 12, label: '', unit: 'mm/s' } }));
  expect(rulesIn(whole)).toEqual(['unit-against-kind']);
});

test('times that are labelled in milliseconds are asked about', async () => {
  const whole = await readWhole(one('text', { abscissa: { specificType: 17, label: 'Time', unit: 'ms' } }));
  expect(whole.recording.channels[0]).toMatchObject({
    rate: { known: false },
    heard: { rate: "its times are labelled 'ms', the format writes seconds" },
  });
});

test('a spectrum along frequency has no sampling rate', async () => {
  const whole = await readWhole(
    one('text', { functionType: 12, abscissa: { specificType: 18, label: 'Frequency', unit: 'Hz' } }),
  );
  expect(whole.recording.channels[0]).toMatchObject({
    rate: { known: false },
    abscissa: { of: 'frequency', even: true },
    heard: { rate: 'spectrum along frequency' },
  });
});

test('bytes in the other order than they are said to be', async () => {
  const bytes = one('big-endian');
  const at = new TextDecoder('latin1').decode(bytes).indexOf('58b') + 8;
  expect(bytes[at]).toBe(0x32);
  bytes[at] = 0x31;
  expect(rulesIn(await readWhole(bytes))).toContain('head-against-itself');
});

test('cut off, or claiming more values than there are: what is there, and a finding', async () => {
  for (const form of ['text', 'little-endian'] as const) {
    const bytes = one(form);
    const whole = await readWhole(bytes.subarray(0, bytes.length - 1000));
    expect(whole.values[0]!.length).toBeGreaterThan(200);
    expect(whole.values[0]!.length).toBeLessThan(400);
    expect(rulesIn(whole)).toContain('length-against-file');
    const giant = new TextDecoder('latin1').decode(bytes).replace('       400', '2000000000');
    const claimed = await readWhole(Uint8Array.from(giant, (each) => each.charCodeAt(0)));
    expect(claimed.values[0]!.length).toBeLessThan(410);
    expect(rulesIn(claimed)).toContain('length-against-file');
  }
});

test('no number is told as such, and a wide abscissa of doubles is recognised by the length', async () => {
  const values = Float64Array.from([1, Number.NaN, 3]);
  expect(rulesIn(await readWhole(one('text', { values })))).toEqual(['values-are-numbers']);
  // As some writers have it: each abscissa value as a double too. 16 bytes a value instead of 12.
  const along = Float64Array.from([0.1, 0.2, 0.3]);
  const narrow = new TextDecoder('latin1').decode(one('little-endian', { values: Float64Array.of(5, 6, 7), along }));
  const head = narrow.split('\n').slice(0, 13).join('\n').replace('          36', '          48');
  const pairs = Float64Array.of(0.1, 5, 0.2, 6, 0.3, 7);
  const wide = inOnePiece([
    new TextEncoder().encode(`${head}\n`),
    new Uint8Array(pairs.buffer),
    new TextEncoder().encode('\n    -1\n'),
  ]);
  const read = await readWhole(wide);
  expect(read.values[0]).toEqual([5, 6, 7]);
  expect(read.along[0]).toEqual([0.1, 0.2, 0.3]);
});

test('negative: what cannot be read is refused with its line', async () => {
  const text = (change: (whole: string) => string) =>
    refusedSaying(
      readWhole(
        Uint8Array.from(change(new TextDecoder('latin1').decode(one('little-endian'))), (each) => each.charCodeAt(0)),
      ),
    );
  expect(await text((whole) => whole.replace('     1     2          11', '     1     3          11'))).toContain(
    'line 2: IBM floats',
  );
  expect(await text((whole) => whole.replace('     1     2          11', '     7     2          11'))).toContain(
    'byte order 7',
  );
  expect(await text((whole) => whole.replace('         4       400', '         9       400'))).toContain(
    'an ordinate type',
  );
  expect(await text(() => '    -1\n   151\nx\n    -1\n')).toContain('datasets 151');
  expect(await text((whole) => whole.slice(0, 300))).toContain('11 lines of description');
});
