import { expect, test } from 'vitest';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type Typed } from './reading.ts';
import { bearingTrain } from './rules/example-trains.ts';

const lines = ['cage', 'outer-ring', 'inner-ring', 'element-spin'] as const;

function bands(changed: Readonly<Record<string, Typed>>) {
  const table = frequencyTable(readTrain(bearingTrain(changed)));
  return Object.fromEntries(
    lines.map((name) => {
      const row = table.rows.find((each) => each.line.name === `drive-end/${name}`)!;
      const cell = row.cells[0]!;
      if (!cell.frequency.known) throw new Error(JSON.stringify(cell));
      const once = table.rows.find((each) => each.line.name === 'fan/1x')!.cells[0]!.between!.low;
      const { low, high } = cell.between!;
      return [
        name,
        { value: cell.frequency.value / once, low: low / once, high: high / once, assumed: row.line.assumed },
      ];
    }),
  );
}

const onlyOutside = (bore: string, outside: string, more: Readonly<Record<string, Typed>> = {}) =>
  bands({
    elements: 'unknown',
    'element-diameter': 'unknown',
    'pitch-diameter': 'unknown',
    'contact-angle': 'unknown',
    bore,
    outside,
    ...more,
  });

/** Multiples of speed as Case Western Reserve University prints them (second-hand); bore and outside from memory. */
const published = [
  {
    bore: '25 mm',
    outside: '52 mm',
    n: 9,
    cage: 0.39828,
    'outer-ring': 3.5848,
    'inner-ring': 5.4152,
    'element-spin': 4.7135 / 2,
  },
  {
    bore: '17 mm',
    outside: '40 mm',
    n: 8,
    cage: 0.3817,
    'outer-ring': 3.0531,
    'inner-ring': 4.9469,
    'element-spin': 3.9874 / 2,
  },
];

test('printed: two published bearings lie inside the band estimated from bore and outside diameter alone', () => {
  for (const bearing of published) {
    const found = onlyOutside(bearing.bore, bearing.outside);
    for (const name of lines) {
      expect(found[name]!.low, name).toBeLessThan(bearing[name]);
      expect(found[name]!.high, name).toBeGreaterThan(bearing[name]);
      expect(found[name]!.assumed).toEqual([
        'number of elements',
        'element diameter',
        'pitch diameter',
        'contact angle',
      ]);
    }
  }
});

test('printed: with the elements counted and a radial bearing the band shrinks below 20 % and still holds them', () => {
  for (const bearing of published) {
    const found = onlyOutside(bearing.bore, bearing.outside, { elements: bearing.n, 'contact-angle': '0 deg' });
    for (const name of ['outer-ring', 'inner-ring'] as const) {
      const { low, high } = found[name]!;
      expect(low).toBeLessThan(bearing[name]);
      expect(high).toBeGreaterThan(bearing[name]);
      expect(high / low - 1).toBeLessThan(0.2);
    }
  }
});

test('a drawn bearing has a band of 2 % either way, and the slip somebody states instead', () => {
  const usual = bands({})['outer-ring']!;
  expect(usual.assumed).toEqual([]);
  expect(usual.low / usual.value).toBeCloseTo(0.98, 12);
  expect(usual.high / usual.value).toBeCloseTo(1.02, 12);
  const stated = bands({ slip: '1 %' })['outer-ring']!;
  expect(stated.high / stated.value).toBeCloseTo(1.01, 12);
});

test('a bearing with half a drawing and no outside dimensions is unknown, and one that cannot roll too', () => {
  expect(() => bands({ 'pitch-diameter': 'unknown' })).toThrow(/pitch diameter/);
  expect(() => bands({ 'pitch-diameter': '7 mm' })).toThrow(/below the pitch diameter/);
  expect(() => bands({ 'contact-angle': 'unknown' })).toThrow(/contact angle/);
});
