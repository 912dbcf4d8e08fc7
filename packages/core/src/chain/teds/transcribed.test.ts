import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { byteList } from './byte-list.ts';
import { codingKinds } from './coding-kinds.ts';
import { accelerometerStream } from './evidence.ts';
import { bytesInLayout, type TedsValues, tedsOf } from './teds.ts';
import { type TranscribedField, transcribedTemplate } from './transcribed.ts';

const layoutOf = (fields: readonly TranscribedField[], templateId = 27) =>
  transcribedTemplate({ title: 'Invented', edition: 'invented', templateId, fields });

const refusal = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return 'was read';
};

interface Written {
  readonly field: Omit<TranscribedField, 'name'>;
  readonly value: number | string;
  /** How far what is read may lie from what was written. */
  readonly within: number;
}

const between = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

/** A field with a value its range holds, and what its coding promises of it. */
const written: fc.Arbitrary<Written> = fc.oneof(
  fc.integer({ min: 1, max: 53 }).chain((bits) =>
    fc
      .maxSafeInteger()
      .map(Math.abs)
      .map((each) => ({ field: { bits, coding: 'unsigned' as const }, value: each % 2 ** bits, within: 0 })),
  ),
  fc.uniqueArray(fc.stringMatching(/^[a-z]{1,8}$/), { minLength: 1, maxLength: 8 }).chain((words) =>
    fc.constantFrom(...words).map((value) => ({
      field: { bits: 3, coding: 'enumeration' as const, words },
      value,
      within: 0,
    })),
  ),
  fc
    .tuple(fc.integer({ min: 2, max: 32 }), between(-100, 100), between(0.001, 10), between(0, 1))
    .map(([bits, start, tolerance, share]) => ({
      field: { bits, coding: 'constant-resolution' as const, start, tolerance },
      value: start + share * 2 * tolerance * (2 ** bits - 2),
      within: tolerance,
    })),
  fc
    .tuple(fc.integer({ min: 2, max: 12 }), between(1e-6, 100), between(0.0001, 0.05), between(0, 1))
    .map(([bits, start, tolerance, share]) => {
      const value = start * (1 + 2 * tolerance) ** (share * (2 ** bits - 2));
      return {
        field: { bits, coding: 'constant-relative-resolution' as const, start, tolerance },
        value,
        within: tolerance * value,
      };
    }),
  fc.float({ noNaN: true, noDefaultInfinity: true }).map((value) => ({
    field: { bits: 32, coding: 'single' as const },
    value,
    within: 0,
  })),
  fc.constantFrom('1998-01-01', '2000-02-29', '2026-11-25').map((value) => ({
    field: { bits: 16, coding: 'date' as const },
    value,
    within: 0,
  })),
  fc.stringMatching(/^[A-Z]{1,4}$/).map((value) => ({
    field: { bits: 20, coding: 'characters-5' as const },
    value,
    within: 0,
  })),
  fc.stringMatching(/^[!-~]{1,6}$/).map((value) => ({
    field: { bits: 42, coding: 'characters-7' as const },
    value,
    within: 0,
  })),
  fc.stringMatching(/^[!-~]{1,6}$/).map((value) => ({
    field: { bits: 48, coding: 'characters-8' as const },
    value,
    within: 0,
  })),
);

const basic: TedsValues = { manufacturer: 40, model: 7, 'version-letter': 'B', 'version-number': 3, serial: 9 };

test('law: in any layout what is read lies within the tolerance of what was written, every field where it belongs', () => {
  fc.assert(
    fc.property(fc.array(written, { minLength: 1, maxLength: 12 }), (all) => {
      const layout = layoutOf(all.map(({ field }, index) => ({ ...field, name: `field-${index}` })));
      const values = Object.fromEntries(all.map(({ value }, index) => [`field-${index}`, value]));
      const teds = tedsOf(bytesInLayout(layout, { ...basic, ...values }), layout);
      let from = 74;
      for (const [index, { field, value, within }] of all.entries()) {
        const told = teds.told.find(({ name }) => name === `field-${index}`)!;
        expect(told.from).toBe(from);
        from += field.bits;
        if (typeof value === 'string') expect(told.value).toBe(value);
        else expect(Math.abs((told.value as number) - value)).toBeLessThanOrEqual(within * (1 + 1e-9) + 1e-12);
      }
      expect(teds.bitsLeft).toBeLessThan(8);
    }),
  );
});

test('every coding is met by the law above, and says what it is', () => {
  const met = new Set(fc.sample(written, { numRuns: 500, seed: 1 }).map(({ field }) => field.coding));
  expect([...met].sort()).toEqual(codingKinds.map(({ kind }) => kind).sort());
  for (const { meaning } of codingKinds) expect(meaning).not.toBe('');
});

test('printed: template 25 copied down as a layout reads the published stream as the built-in one does', () => {
  const layout = layoutOf(
    [
      { name: 'senses', bits: 1, coding: 'unsigned' },
      { name: 'extended', bits: 1, coding: 'unsigned' },
      {
        name: 'sensitivity',
        bits: 16,
        coding: 'constant-relative-resolution',
        start: 5e-7,
        tolerance: 0.00015,
        unit: 'V/(m/s²)',
      },
    ],
    25,
  );
  const { bytes } = byteList(accelerometerStream);
  const told = tedsOf(bytes, layout).told.find(({ name }) => name === 'sensitivity')!;
  // 49.03 V/g within 0.01, from the tests of a public library (see evidence.ts), at 9.80665 m/s² to the g.
  expect((told.value as number) * 9.80665).toBeCloseTo(49.03, 2);
  expect(told).toMatchObject({ from: 76, bits: 16, unit: 'V/(m/s²)' });
});

test('a branch stands there only where its selector has that code, in reading and in writing', () => {
  const layout = layoutOf([
    { name: 'which', bits: 1, coding: 'unsigned' },
    { name: 'long', bits: 16, coding: 'unsigned', onlyWhere: { field: 'which', code: 1 } },
    { name: 'last', bits: 4, coding: 'unsigned' },
  ]);
  const names = (values: TedsValues) =>
    tedsOf(bytesInLayout(layout, { ...basic, ...values }), layout)
      .told.slice(7)
      .map(({ name, value }) => `${name}=${value}`);
  expect(names({ which: 0, last: 9 })).toEqual(['which=0', 'last=9']);
  expect(names({ which: 1, long: 500, last: 9 })).toEqual(['which=1', 'long=500', 'last=9']);
  expect(refusal(() => names({ which: 1, last: 9 }))).toMatch(/'long'/);
});

test('negative: another template than that of the layout is refused', () => {
  const layout = layoutOf([{ name: 'first', bits: 1, coding: 'unsigned' }]);
  expect(refusal(() => tedsOf(byteList(accelerometerStream).bytes, layout))).toMatch(
    /bytes of template 25', expected template 27/,
  );
});

test('negative: a layout that contradicts itself is refused with what was expected', () => {
  const said = (...fields: readonly Partial<TranscribedField>[]) =>
    refusal(() => layoutOf(fields.map((each) => ({ name: 'a', bits: 8, coding: 'unsigned' as const, ...each }))));
  expect(said({})).toBe('was read');
  expect(said({}, {})).toMatch(/each name once/);
  expect(said({ name: 'serial' })).toMatch(/no field before the template/);
  expect(said({ bits: 54 })).toMatch(/1 to 53 bits for the coding 'unsigned'/);
  expect(said({ coding: 'single' })).toMatch(/expected 32 bits/);
  expect(said({ coding: 'characters-5' })).toMatch(/a multiple of 5/);
  expect(said({ start: 3 })).toMatch(/no 'start' for the coding 'unsigned'/);
  expect(said({ coding: 'constant-resolution', start: 1 })).toMatch(/'step' or 'tolerance', one of the two/);
  expect(said({ coding: 'constant-resolution', start: 1, step: 1, tolerance: 1 })).toMatch(/one of the two/);
  expect(said({ coding: 'constant-resolution', start: 1, step: 0 })).toMatch(/'step' above zero/);
  expect(said({ coding: 'constant-relative-resolution', start: 0, tolerance: 0.1 })).toMatch(/'start' above zero/);
  expect(said({ coding: 'constant-relative-resolution', start: 1, tolerance: 0.1, bits: 32 })).toMatch(/ends at a num/);
  expect(said({ coding: 'enumeration', words: ['x', 'y', 'x'] })).toMatch(/each word once/);
  expect(said({ coding: 'enumeration', words: ['x', 'y', 'z'], bits: 1 })).toMatch(/at most 2, for 1 bits/);
  expect(said({ onlyWhere: { field: 'b', code: 0 } })).toMatch(/stands before 'a'/);
  expect(said({ bits: 1 }, { name: 'b', onlyWhere: { field: 'a', code: 2 } })).toMatch(/a code below 2/);
});
