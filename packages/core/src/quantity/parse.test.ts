import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showQuantity, valueIn } from './format.ts';
import { parseDecibels, parseQuantity } from './parse.ts';
import { type QuantityName, quantities } from './quantities.ts';
import { Refusal } from './refusal.ts';
import { meaningFor } from './unit-expression.ts';

const stored = JSON.parse(readFileSync(new URL('../../../../evidence/scipy/units.json', import.meta.url), 'utf8'));
const names = Object.keys(quantities) as QuantityName[];

/** Further writings of units that the lists of usual units do not hold. */
const otherWritings: Partial<Record<QuantityName, readonly string[]>> = {
  frequency: ['kHz', 'mHz', '1/s', 's-1', 's^-1', 'r/min', 'rpm', 'cpm', '1/min', 'rad/s', 'deg/s'],
  'shaft speed': ['rpm', 'RPM', 'rev/min', 'Hz', 'rad/s', 'min-1', 'min⁻¹'],
  acceleration: ['m/s2', 'm/s²', 'm/s^2', 'm s-2', 'mm/s2', 'gn', 'in/s2', 'm/s/s'],
  velocity: ['m/s', 'um/s', 'µm/s', 'ips', 'in/s', 'm s-1', 'ft/min'],
  displacement: ['m', 'mm', 'nm', 'mils', 'in', 'μm', 'µm'],
  length: ['km', 'cm', 'mil'],
  temperature: ['K', '°C', 'degC', 'C', '°F', 'degF', 'F'],
  capacitance: ['F', 'mF', 'fF', 'µF'],
  resistance: ['Ω', 'kΩ', 'MΩ', 'V/A', 'GΩ'],
  torque: ['N·m', 'N m', 'kN*m', 'lbf*in', 'lbf·ft'],
  stiffness: ['N/mm', 'N/um', 'lbf/in'],
  angle: ['rad', 'mrad', '°', 'turn'],
  ratio: ['%', 'ppm', 'mm/m', 'V/V'],
  fraction: ['ppm', 'mm/m'],
  'voltage per acceleration': ['V/g', 'mV/(m/s2)', 'mV/(m/s²)', 'mV per m/s2'],
  'voltage per velocity': ['V/(m/s)', 'mV per mm/s', 'mV per in/s', 'V·s/m', 'mV/(mm/s)', 'V s/m'],
  'voltage per displacement': ['V/mm', 'mV/µm', 'mV per mil'],
  'acceleration density': ['g/√Hz', 'g/rtHz', 'ug/sqrt(Hz)', 'µg/√(Hz)', '(m/s2)/sqrtHz', 'g/Hz^0.5'],
  'voltage density': ['V/√Hz', 'nV/sqrt(Hz)'],
  'capacitance per length': ['nF/km', 'F/m'],
  'resistance per length': ['Ω/km', 'mΩ/m', 'ohm/ft'],
  'per temperature': ['1/K', '%/°C', '%/C', 'ppm/K', '%/degF'],
  count: ['counts', 'count'],
};

function unitsOf(name: QuantityName): readonly string[] {
  const { unit, metric, us } = quantities[name];
  const all = [unit, ...metric, ...us, ...(otherWritings[name] ?? [])];
  return [...new Set(all)].filter((each) => each !== '1');
}

test('independent: units as scipy.constants knows them', () => {
  for (const [text, [name, value]] of Object.entries(stored.values) as [string, [QuantityName, number]][]) {
    expect(parseQuantity(text, name) / value, text).toBeCloseTo(1, 14);
  }
  for (const [text, kelvin] of Object.entries(stored.temperatures) as [string, number][]) {
    expect(parseQuantity(text, 'temperature'), text).toBeCloseTo(kelvin, 10);
  }
});

test('law: what engineers type is read', () => {
  const typed: readonly (readonly [string, QuantityName, number])[] = [
    ['100 mV/g', 'voltage per acceleration', 0.1 / 9.80665],
    ['1486 r/min', 'shaft speed', 1486 / 60],
    ['1486 rpm', 'shaft speed', 1486 / 60],
    ['24.8 Hz', 'frequency', 24.8],
    ['89160 cpm', 'frequency', 1486],
    ['65 °C', 'temperature', 338.15],
    ['8.5 nF', 'capacitance', 8.5e-9],
    ['100 pF/m', 'capacitance per length', 1e-10],
    ['500 mV per in/s', 'voltage per velocity', 0.5 / 0.0254],
    ['20 mV/(mm/s)', 'voltage per velocity', 20],
    ['7.87 V/mm', 'voltage per displacement', 7870],
    ['200 mV/mil', 'voltage per displacement', 0.2 / 25.4e-6],
    ['45°', 'angle', Math.PI / 4],
    ['50%', 'fraction', 0.5],
    ['1.25', 'ratio', 1.25],
    ['6.0206 dB', 'ratio', 2],
    ['1000 rad/s', 'frequency', 1000 / (2 * Math.PI)],
    ['−20 °C', 'temperature', 253.15],
    ['+4 mA', 'current', 4e-3],
    ['1e-3 A', 'current', 1e-3],
    ['.5 V', 'voltage', 0.5],
    ['18\u00a0ohm/km', 'resistance per length', 0.018],
    ['8\u202f192 counts'.replace('\u202f', ''), 'count', 8192],
  ];
  for (const [text, name, value] of typed) expect(parseQuantity(text, name) / value, text).toBeCloseTo(1, 5);
});

test('law: a decimal comma is read only where the text declares it', () => {
  expect(parseQuantity('3,5 Hz', 'frequency', { decimal: 'comma' })).toBe(3.5);
  expect(() => parseQuantity('3,5 Hz', 'frequency')).toThrow(/decimals: comma/);
  expect(() => parseQuantity('3.5 Hz', 'frequency', { decimal: 'comma' })).toThrow(/declares comma decimals/);
  for (const decimal of ['point', 'comma'] as const) {
    for (const text of [
      '1,234.5 Hz',
      '1.234,5 Hz',
      '1.234.567 Hz',
      '1,234,567 Hz',
      '1 234 Hz',
      '1 111 Hz',
      "1'234 Hz",
    ]) {
      expect(() => parseQuantity(text, 'frequency', { decimal }), text).toThrow(Refusal);
    }
  }
});

for (const name of names) {
  test(`law: every unit of ${name} agrees with every other`, () => {
    for (const unit of unitsOf(name)) {
      const one = parseQuantity(`1 ${unit}`, name);
      expect(meaningFor(unit, name), unit).toBeDefined();
      expect(valueIn(unit, name, one), unit).toBeCloseTo(1, 9);
    }
    if (unitsOf(name).length === 0) return;
    const unit = fc.constantFrom(...unitsOf(name));
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e5, noNaN: true }), unit, unit, (value, a, b) => {
        const read = parseQuantity(`${value} ${a}`, name);
        const other = valueIn(b, name, read);
        if ('neverNegative' in quantities[name]) expect(other).toBeGreaterThan(0);
        const back = parseQuantity(`${other.toPrecision(17)} ${b}`, name);
        expect(Math.abs(back - read)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(read), 1e-30));
      }),
    );
  });

  test(`law: ${name} as shown reads back as the same value and is shown the same again`, () => {
    // A few kelvin above absolute zero a rounded °F may stand below it; nobody measures there.
    const [least, most] = name === 'temperature' ? [1.7, 3.5] : [-18, 12];
    const size = fc.double({ min: least, max: most, noNaN: true });
    const signed =
      'neverNegative' in quantities[name] || name === 'temperature' ? fc.constant(1) : fc.constantFrom(1, -1);
    const units = fc.constantFrom('metric' as const, 'us' as const);
    const decimal = fc.constantFrom('point' as const, 'comma' as const);
    fc.assert(
      fc.property(
        size,
        signed,
        units,
        decimal,
        fc.integer({ min: 3, max: 9 }),
        (power, sign, system, point, digits) => {
          const value = sign * 10 ** power;
          const showing = { units: system, decimal: point, digits };
          const shown = showQuantity(name, value, showing);
          const read = parseQuantity(shown, name, { decimal: point });
          const scale =
            name === 'temperature'
              ? Math.abs(valueIn(system === 'us' ? '°F' : '°C', name, value)) + 1
              : Math.abs(value);
          expect(Math.abs(read - value)).toBeLessThanOrEqual(0.51 * 10 ** (1 - digits) * scale);
          if (name !== 'temperature') expect(showQuantity(name, read, showing)).toBe(shown);
        },
      ),
    );
  });

  test(`law: no unit of another quantity is read as ${name}; the refusal names both`, () => {
    for (const other of names) {
      if (other === name) continue;
      for (const unit of unitsOf(other)) {
        if (meaningFor(unit, name) !== undefined) {
          expect(sameFamily(name, other) || sharesWriting(unit, name), `${unit} of ${other} as ${name}`).toBe(true);
          continue;
        }
        const act = () => parseQuantity(`1 ${unit}`, name);
        expect(act, unit).toThrow(Refusal);
        expect(act, unit).toThrow(new RegExp(`expected an? ${name}.* is asked for|divides twice`, 's'));
      }
    }
  });
}

/** Quantities that are one and the same kind of number under two names. */
function sameFamily(a: QuantityName, b: QuantityName): boolean {
  const families: readonly (readonly QuantityName[])[] = [
    ['frequency', 'shaft speed'],
    ['displacement', 'length'],
    // Henry per ohm is a second.
    ['time', 'duration', 'inductance per resistance'],
    ['temperature', 'temperature difference'],
    ['ratio', 'fraction'],
  ];
  return families.some((family) => family.includes(a) && family.includes(b));
}

/** Writings that truly have two meanings: what is asked for decides. */
function sharesWriting(unit: string, name: QuantityName): boolean {
  const shared: Readonly<Record<string, readonly QuantityName[]>> = {
    g: ['acceleration', 'mass'],
    mg: ['acceleration', 'mass'],
    ug: ['acceleration', 'mass'],
    C: ['temperature', 'temperature difference', 'charge'],
    F: ['temperature', 'temperature difference', 'capacitance'],
    turn: ['angle', 'count'],
  };
  return shared[unit]?.includes(name) === true;
}

test('negative: a number without a unit is no quantity, and no unit is assumed', () => {
  for (const name of names.filter((each) => each !== 'ratio' && each !== 'count')) {
    expect(() => parseQuantity('5', name), name).toThrow(/no unit; none is ever assumed/);
  }
  expect(parseQuantity('5', 'ratio')).toBe(5);
  expect(parseQuantity('5', 'count')).toBe(5);
});

test('negative: a detector has no place in a quantity without one', () => {
  expect(() => parseQuantity('5 mV rms', 'voltage')).toThrow(/carries the detector rms; a voltage has none/);
  expect(() => parseQuantity('7.1 mm/s pk', 'velocity')).toThrow(/detector peak/);
});

test('negative: what is written twice by one division is asked to be grouped', () => {
  expect(() => parseQuantity('500 mV/in/s', 'voltage per velocity')).toThrow("write 'mV/(in/s)'");
  expect(() => parseQuantity('20 mV/mm/s', 'voltage per velocity')).toThrow("write 'mV/(mm/s)'");
  expect(() => parseQuantity('10 mV/m/s2', 'voltage per acceleration')).toThrow("write 'mV/(m/s2)'");
  expect(() => parseQuantity('5 mV per m per s', 'voltage per velocity')).toThrow(Refusal);
});

test('negative: capitals are never corrected, only suggested', () => {
  const suggested: readonly (readonly [string, QuantityName, string])[] = [
    ['50 hz', 'frequency', "Did you mean 'Hz'"],
    ['50 HZ', 'frequency', "Did you mean 'Hz'"],
    ['10 khz', 'frequency', "Did you mean 'kHz'"],
    ['100 mv/g', 'voltage per acceleration', "Did you mean 'mV/g'"],
    ['8.5 nf', 'capacitance', "Did you mean 'nF'"],
    ['1486 Rpm', 'shaft speed', 'Did you mean'],
    ['4 ma', 'current', "Did you mean 'mA'"],
    ['50 mhz', 'frequency', "'MHz' or 'mHz'"],
    ['5 MM', 'length', "Did you mean 'mm'"],
  ];
  for (const [text, name, suggestion] of suggested) {
    expect(() => parseQuantity(text, name), text).toThrow(Refusal);
    expect(() => parseQuantity(text, name), text).toThrow(suggestion);
  }
});

test('negative: an angular speed is divided by 2π and not read as hertz', () => {
  expect(parseQuantity('314.159 rad/s', 'shaft speed')).toBeCloseTo(50, 4);
  expect(parseQuantity('360 deg/s', 'frequency')).toBeCloseTo(1, 12);
});

test('negative: percent, degrees, turns and counts are not each other', () => {
  for (const [text, name] of [
    ['5 %', 'count'],
    ['5 %', 'angle'],
    ['5 deg', 'ratio'],
    ['5 deg', 'fraction'],
    ['5 counts', 'ratio'],
    ['5 turns', 'ratio'],
    ['5 rad', 'fraction'],
  ] as const) {
    expect(() => parseQuantity(text, name), `${text} as ${name}`).toThrow(Refusal);
  }
});

test('negative: below absolute zero, or below nothing', () => {
  expect(() => parseQuantity('-300 °C', 'temperature')).toThrow(/absolute zero/);
  expect(parseQuantity('-300 K', 'temperature difference')).toBe(-300);
  for (const [text, name] of [
    ['-5 Hz', 'frequency'],
    ['-8.5 nF', 'capacitance'],
    ['-50 ohm', 'resistance'],
    ['-1 kg', 'mass'],
  ] as const) {
    expect(() => parseQuantity(text, name), text).toThrow(/below zero/);
  }
  expect(parseQuantity('-1486 r/min', 'shaft speed')).toBeCloseTo(-1486 / 60, 10);
});

test('negative: decibels of a loss carry no reference and no other unit', () => {
  expect(parseDecibels('1.42 dB')).toBe(1.42);
  expect(parseDecibels('−6,02 dB', { decimal: 'comma' })).toBe(-6.02);
  for (const text of ['1.42', '1.42 dB re 1 V', '1.42 %', '1.42 db', 'dB', '']) {
    expect(() => parseDecibels(text), text).toThrow(Refusal);
  }
});
