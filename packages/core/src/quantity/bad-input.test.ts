import { expect, test } from 'vitest';
import { countField } from './field.ts';
import { comparable } from './level.ts';
import { parseLevel } from './level-text.ts';
import { pointDecimals } from './number.ts';
import { parseQuantity } from './parse.ts';
import { motions, type QuantityName } from './quantities.ts';
import { levelField, quantityField, toleranceField } from './quantity-field.ts';
import { Refusal } from './refusal.ts';
import { parseTolerance } from './span.ts';

/** What bad input looks like in the trade, as far as a single value can show it. Each is refused, and says why. */
function refusedQuantities(entries: readonly (readonly [string, QuantityName, RegExp])[]): void {
  for (const [text, name, why] of entries) {
    expect(() => parseQuantity(text, name), `'${text}' as ${name}`).toThrow(Refusal);
    expect(() => parseQuantity(text, name), `'${text}' as ${name}`).toThrow(why);
  }
}

test('negative: unit of another quantity, or none', () => {
  refusedQuantities([
    ['1486', 'shaft speed', /no unit; none is ever assumed/],
    ['25', 'frequency', /no unit/],
    ['4.5 mm/s', 'displacement', /unit of velocity, and displacement is asked for/],
    ['80 um', 'velocity', /unit of displacement or length, and velocity/],
    ['2 mil', 'acceleration', /and acceleration is asked for/],
    ['8.5 nF', 'capacitance per length', /unit of capacitance, and capacitance per length/],
    ['100 pF/m', 'capacitance', /unit of capacitance per length, and capacitance/],
    ['18 ohm/km', 'resistance', /unit of resistance per length, and resistance/],
    ['11 ohm', 'resistance per length', /unit of resistance, and resistance per length/],
    ['15 kW', 'torque', /unit of power, and torque/],
    ['65 °C', 'ratio', /unit of temperature/],
    ['3 dB', 'voltage', /not a unit known here/],
    ['60 dB re 1 um/s2', 'ratio', /not a unit known here/],
    ['8 ug', 'acceleration density', /unit of acceleration or mass, and acceleration density/],
    ['700 ug/rtHz', 'acceleration', /unit of acceleration density, and acceleration/],
  ]);
  expect(parseQuantity('15 kW', 'power') / parseQuantity('20.115 hp', 'power')).toBeCloseTo(1, 4);
  expect(parseQuantity('149 °F', 'temperature')).toBeCloseTo(parseQuantity('65 °C', 'temperature'), 10);
});

test('negative: no detector, two detectors, unlike detectors or bands', () => {
  const read = (text: string) => parseLevel(text, motions);
  expect(() => read('4.5 mm/s')).toThrow(/detector is missing/);
  expect(() => read('4.5 mm/s rms pk')).toThrow(/two detectors/);
  expect(() => comparable(read('4.5 mm/s rms'), read('6.4 mm/s pk'))).toThrow(/detectors \(rms and peak\)/);
  expect(() => comparable(read('6.4 mm/s pk'), read('6.4 mm/s derived peak'))).toThrow(/peak and derived-peak/);
  expect(() => comparable(read('4.5 mm/s rms'), read('80 um pp'))).toThrow(/quantities \(velocity and displacement\)/);
  expect(() => comparable(read('4.5 mm/s rms 10-1000 Hz'), read('4.5 mm/s rms 2-1000 Hz'))).toThrow(
    /bands \(10..1000 Hz and 2..1000 Hz\)/,
  );
  expect(() => comparable(read('4.5 mm/s rms 10-1000 Hz'), read('4.5 mm/s rms'))).toThrow(/no band stated/);
});

test('negative: a direction or a side is no angle', () => {
  refusedQuantities([
    ['left', 'angle', /expected an angle/],
    ['45 left', 'angle', /'left' is not a unit/],
    ["3 o'clock", 'angle', /not a unit/],
    ['45', 'angle', /no unit/],
    ['45 deg left', 'angle', /not a unit/],
  ]);
});

test('negative: data sheet habits that lose the meaning', () => {
  // A band to 3 dB is not one to 5 %: the tolerance says what it is in per cent.
  const threeDecibels = parseTolerance('±3 dB');
  expect(threeDecibels.high).toBeCloseTo(0.4125, 4);
  expect(threeDecibels.low).toBeCloseTo(-0.2921, 4);
  // A range in g rms is no peak range.
  const peak = parseLevel('80 g pk', ['acceleration']);
  expect(() => comparable(peak, parseLevel('50 g rms', ['acceleration']))).toThrow(/peak and rms/);
  expect(() => toleranceField('Sensitivity').read('5 %', pointDecimals)).toThrow(/±10 %/);
  refusedQuantities([
    ['typ. 100 mV/g', 'voltage per acceleration', /begins with its number/],
    ['100 mV/g ±5 %', 'voltage per acceleration', /not a unit/],
    ['~1500 r/min', 'shaft speed', /Write the number alone/],
    ['approx. 1500 r/min', 'shaft speed', /Write the number alone/],
    ['<700 ug', 'acceleration', /Write the number alone/],
    ['10-14 V', 'voltage', /not a range/],
  ]);
});

test('negative: comma, thousands and dates', () => {
  refusedQuantities([
    ['3,5 mm/s', 'velocity', /decimals: comma/],
    ['1,486 r/min', 'shaft speed', /no separator between thousands/],
    ['1 486 r/min', 'shaft speed', /no separator between thousands/],
    ['1.486.000 Hz', 'frequency', /no separator between thousands/],
    ["1'486 r/min", 'shaft speed', /not a unit/],
    ['2024-05-03', 'duration', /not a/],
    ['03.05.2024', 'duration', /no separator/],
    ['3/5/2024', 'duration', /not a unit/],
  ]);
  expect(() => parseQuantity('1.486,5 Hz', 'frequency', { decimal: 'comma' })).toThrow(/comma decimals/);
});

test('negative: silence is not zero', () => {
  for (const text of [
    '',
    ' ',
    '-',
    '–',
    '—',
    '−',
    'n/a',
    'N/A',
    '#N/A',
    'n.a.',
    'nil',
    'none',
    'null',
    'TBD',
    '?',
    'NaN',
    'unknown',
  ]) {
    expect(() => parseQuantity(text, 'frequency'), `'${text}'`).toThrow(/never read as zero/);
    expect(() => parseQuantity(text, 'ratio'), `'${text}'`).toThrow(/never read as zero/);
    expect(() => parseLevel(text, motions), `'${text}'`).toThrow(/never read as zero/);
    expect(() => countField('Vanes').read(text, pointDecimals), `'${text}'`).toThrow(Refusal);
  }
  for (const raw of [null, undefined, [], {}, true, Number.NaN, 5]) {
    expect(() => quantityField('frequency', 'Speed').read(raw, pointDecimals), String(raw)).toThrow(Refusal);
    expect(() => levelField(motions, 'Level').read(raw, pointDecimals), String(raw)).toThrow(Refusal);
  }
});

test('negative: a count is a whole number in plain digits', () => {
  for (const raw of [
    '9.5',
    '9,0',
    '1e1',
    '0x9',
    '-9',
    '0',
    '９',
    9.5,
    -1,
    0,
    Number.POSITIVE_INFINITY,
    '12345678901',
  ]) {
    expect(() => countField('Vanes').read(raw, pointDecimals), String(raw)).toThrow(Refusal);
  }
  expect(countField('Vanes').read(' 7 ', pointDecimals)).toBe(7);
});
