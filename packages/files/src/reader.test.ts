import { quantityField, Refusal, type Sheet, type Stated } from '@soundpost/core';
import { expect, expectTypeOf, test } from 'vitest';
import { listOf, mapOf } from './collections.ts';
import { motorFields, plant, type sensorKinds } from './example-plant.ts';
import { byKind, kindReader } from './kinds.ts';
import { readYaml } from './read-yaml.ts';
import { count, flag, made, plain, type ReadBy, text, withPlace } from './reader.ts';
import { beside, optionally, record } from './record.ts';
import { bytesOf, refused } from './refused.ts';
import { sheet } from './sheet.ts';
import { stated } from './stated.ts';

const read = (yaml: string) => readYaml(bytesOf(yaml), 'plant.yaml', plant);
const refusedPlant = (yaml: string) => refused(() => read(yaml));

const whole = `
machines:
  P-301:
    title: 012
    duty: running
    running-speed: {value: 1486 r/min, status: nameplate, source: photo 12}
    speed-range: 750..1500 r/min
    limit: {unknown: true, ask: the maker, between: [4.5 mm/s rms, 7.1 mm/s rms]}
    vanes: 6
    notes: [yes, 1.50]
    power: 160 kW
  P-302:
    title: Standby pump
    duty: standby
    running-speed: unknown
sensors:
  VEL-1: {kind: moving-coil, sensitivity: 20 mV/(mm/s), noise: {1 Hz: 30 nm/s/rtHz, 10 Hz: 8 nm/s/rtHz}, price: 300}
  ACC-1: {kind: accelerometer, isolated: yes}
`;

test('one description gives the record: names, statements, sheets, kinds', () => {
  const { value, writing } = read(whole);
  expect(writing).toEqual({ decimal: 'point' });
  const [first, second] = value.machines;
  expect(first).toMatchObject({ tag: 'P-301', title: '012', duty: 'running', vanes: 6, notes: ['yes', '1.50'] });
  expect(first?.runningSpeed).toEqual({
    ...{ known: true, value: 1486 / 60, written: '1486 r/min' },
    ...{ status: 'nameplate', source: 'photo 12' },
  });
  expect(first?.limit).toMatchObject({ known: false, ask: 'the maker', between: { low: { detector: 'rms' } } });
  expect(first?.motor).toMatchObject({ of: 'motor of P-301', values: { power: { known: true, value: 160_000 } } });
  expect(second).toEqual({
    ...{ tag: 'P-302', title: 'Standby pump', duty: 'standby', runningSpeed: { known: false } },
    motor: { of: 'motor of P-302', values: { power: { known: false }, slip: undefined } },
  });
  expect(value.sensors).toMatchObject([
    {
      name: 'VEL-1',
      kind: 'moving-coil',
      price: '300',
      sheet: { of: 'sensor VEL-1', values: { sensitivity: { value: 20 } } },
    },
    {
      ...{ name: 'ACC-1', kind: 'accelerometer' },
      sheet: { of: 'sensor ACC-1', values: { isolated: { value: true }, mountedResonance: { known: false } } },
    },
  ]);
});

test('types follow from the description, and none of them is any', () => {
  type Plant = ReadBy<typeof plant>;
  type Machine = Plant['machines'][number];
  expectTypeOf<Machine['duty']>().toEqualTypeOf<'running' | 'standby'>();
  expectTypeOf<Machine['tag']>().toEqualTypeOf<string>();
  expectTypeOf<Machine['motor']>().toEqualTypeOf<Sheet<typeof motorFields>>();
  expectTypeOf<Machine['runningSpeed']['known']>().toEqualTypeOf<boolean>();
  expectTypeOf<Pick<Machine, 'vanes'>>().toEqualTypeOf<{ readonly vanes?: number }>();
  type Sensor = NonNullable<Plant['sensors']>[number];
  type Coil = Extract<Sensor, { kind: 'moving-coil' }>;
  expectTypeOf<Coil['sheet']>().toEqualTypeOf<Sheet<(typeof sensorKinds)[0]['dataSheet']>>();
  // biome-ignore lint/suspicious/noExplicitAny: the type that must not be
  type IsAny<T> = 0 extends 1 & T ? any : never;
  expectTypeOf<IsAny<Sensor>>().toEqualTypeOf<never>();
  expectTypeOf<IsAny<Machine['limit']>>().toEqualTypeOf<never>();
});

const machine = (lines: string) =>
  `machines:\n  P-301:\n    title: Raw-water pump\n    duty: running\n    running-speed: unknown\n${lines}`;

// Golden: our own words, to be read by a person. Each is one typical slip of the pen.
test('golden: a key with a letter missing', () => {
  expect(refusedPlant(machine('    pwer: 160 kW\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:6:5: machines/P-301: read 'pwer', expected a key of a machine: title, duty, running-speed, speed-range, limit, vanes, notes, power, slip. Did you mean 'power'?
        6 |     pwer: 160 kW
                ^"
  `);
});

test('golden: a unit of something else', () => {
  expect(refusedPlant(machine('    power: 160 A\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:6:12: machines/P-301/power: read '160 A', expected a power in mW, W, kW, MW or the like. 'A' is a unit of current, and power is asked for.
        6 |     power: 160 A
                       ^"
  `);
});

test('golden: a level without its detector', () => {
  expect(refusedPlant(machine('    limit: 4.5 mm/s\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:6:12: machines/P-301/limit: read '4.5 mm/s', expected a velocity in mm/s, with its detector (rms, peak, pp). The detector is missing: the same sine is 1 rms, 1.414 peak or 2.828 peak-to-peak.
        6 |     limit: 4.5 mm/s
                       ^"
  `);
});

test('golden: a number without a unit', () => {
  expect(refusedPlant(machine('    power: 160\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:6:12: machines/P-301/power: read '160', expected a power in mW, W, kW, MW or the like. The number 160 has no unit; none is ever assumed.
        6 |     power: 160
                       ^"
  `);
});

test('golden: a decimal comma in a file that declares none', () => {
  expect(refusedPlant(machine('    limit: 4,5 mm/s rms\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:6:12: machines/P-301/limit: read '4,5 mm/s rms', expected a velocity in mm/s, with its detector (rms, peak, pp). Write '3.5', and no separator between thousands; a decimal comma is read only where the file declares 'decimals: comma'.
        6 |     limit: 4,5 mm/s rms
                       ^"
  `);
});

test('a decimal comma inside { } is one refusal, at the number, and the rest of the file is read on', () => {
  const at = '    power: { value: 1,9 kW, status: measured }\n    limit: { value: 4,5 mm/s rms }\n    duty: runing\n';
  const { refusals } = refusedPlant(machine(at).replace('    duty: running\n', ''));
  expect(refusals.map(({ line, column, read }) => `${line}:${column} ${read}`)).toEqual([
    '5:21 1,9 kW',
    '6:21 4,5 mm/s rms',
    '7:11 runing',
  ]);
  expect(refusals[0]).toMatchObject({
    path: 'machines/P-301/power/value',
    expected: expect.stringMatching(/without a comma: inside \{ \} a comma divides '1' from the rest/),
    suggestion: expect.stringMatching(/decimal point \('1\.9 kW'\).*'decimals: comma'.*in quotes \('1,9 kW'\)/),
  });
});

test('law: what is no decimal comma keeps its own refusal, and a quoted one is read where commas are declared', () => {
  const said = (text: string) =>
    refusedPlant(machine(text))
      .refusals.map(({ expected }) => expected)
      .join();
  expect(said('    power: { value: 1 kW, 9 kW }\n')).not.toMatch(/a comma divides/);
  expect(said('    power: { value: 1 kW,9 kW }\n')).not.toMatch(/a comma divides/);
  const commas = `decimals: comma\n${machine("    power: { value: '1,9 kW' }\n")}`;
  expect(() => read(commas)).not.toThrow();
});

test('golden: a word that is none of the choices', () => {
  expect(refusedPlant(machine('').replace('running\n', 'runing\n')).message).toMatchInlineSnapshot(`
    "plant.yaml:4:11: machines/P-301/duty: read 'runing', expected one of: running, standby. Did you mean 'running'?
        4 |     duty: runing
                      ^"
  `);
});

test('a file that declares comma decimals is read with them, and with them only', () => {
  const comma = (speed: string) => `decimals: comma\n${whole.replace('1486 r/min', speed)}`;
  expect(
    read(
      comma('"1486,5 r/min"')
        .replaceAll('4.5', '4,5')
        .replaceAll(/\[4,5 mm.*?\]/g, "['4,5 mm/s rms', '7,1 mm/s rms']"),
    ),
  ).toMatchObject({
    writing: { decimal: 'comma' },
    value: { machines: [{ runningSpeed: { value: 1486.5 / 60, written: '1486,5 r/min' } }, {}] },
  });
  expect(refusedPlant(comma('1486.5 r/min')).message).toContain('This file declares comma decimals');
  expect(refusedPlant('decimals: dot\nmachines: {}').refusals[0]).toMatchObject({ read: 'dot', path: 'decimals' });
});

const at = (yaml: string) => refusedPlant(yaml).refusals.map(({ line, column, read }) => `${line}:${column} ${read}`);

test('every fault of a file is told in one pass, in the order of the file', () => {
  const yaml = `machines:
  P-301:
    title: ''
    dutty: running
    Running_Speed: 1486
    vanes: 5.5
    notes: #12
  P/302: 5
sensors:
  VEL-1: {kind: moving-coils}
  VEL-2: {kind: moving-coil, mounted-resonance: 3 Hz, noise: {1 Hz: 30 nm/s/rtHz, 10 Hz: 8 mm}}
  VEL-3: {sensitivity: x}
`;
  expect(at(yaml)).toEqual([
    ...['3:12 ', '4:5 dutty', '5:5 Running_Speed', '6:12 5.5', '7:12 ', '8:3 P/302', '8:10 5'],
    ...['10:17 moving-coils', '11:30 mounted-resonance', '11:90 8 mm', '12:10 '],
  ]);
  const { message } = refusedPlant(yaml);
  expect(message).toContain("Did you mean 'duty'?");
  expect(message).toContain("Did you mean 'running-speed'?");
  expect(message).toContain("put a text that begins with '#' in quotes");
  expect(message).toContain("expected 'kind': the kind of a sensor, one of: moving-coil, accelerometer");
});

test('a missing key is told where the mapping stands, with what belongs there', () => {
  const [first, second] = refusedPlant('machines:\n  P-301:\n    duty: running\n').refusals;
  expect(first).toMatchObject({ line: 3, read: '', path: 'machines/P-301' });
  expect(first?.expected).toBe("'title' in a machine: a text of at most 2000 characters");
  expect(second?.expected).toContain("'running-speed' in a machine: a shaft speed");
});

test('an empty value is never a value', () => {
  for (const nothing of ['', '~', 'null', '""', "' '"]) {
    expect(refusedPlant(machine(`    power: ${nothing}\n`)).refusals).toHaveLength(1);
  }
});

const statement = (speed: string) => refusedPlant(machine('').replace('speed: unknown', `speed: ${speed}`)).refusals;

test.each([
  ['{value: 1486 r/min, unknown: true}', "either 'value' or 'unknown', not both"],
  ['{value: 1486 r/min, ask: the maker}', "'ask' only where the value is unknown"],
  ['{value: 1486 r/min, between: [1 Hz, 2 Hz]}', "'between' only where the value is unknown"],
  ['{unknown: true, source: photo}', "'source' only beside a value that is known"],
  ['{value: unknown, status: nameplate}', "'status' only beside a value that is known"],
  ['{unknown: nobody knows}', "'unknown: true'"],
  ['{status: nameplate}', "'value': a shaft speed in r/min or the like; or 'unknown: true'"],
  ['{value: 1486 r/min, status: guessed}', 'one of: measured, nameplate, drawing, certificate, data sheet, assumed'],
  ['{unknown: true, between: [25 Hz, 24 Hz]}', 'the low bound before the high one'],
  ['{unknown: true, between: [25 Hz]}', 'at least 2'],
  ['{unknown: true, between: 24..25 Hz}', 'a list: the low and the high bound, [low, high]'],
  ['[1486 r/min]', 'a shaft speed in r/min or the like'],
])('negative: a statement that says too much, too little or nothing: %s', (speed, expected) => {
  const refusals = statement(speed);
  expect(refusals).toHaveLength(1);
  expect(refusals[0]?.expected).toBe(expected);
});

test('a value may be called unknown in each of its ways', () => {
  const speed = stated(quantityField('frequency', 'Speed'));
  const one = (yaml: string): Stated<number> =>
    readYaml(bytesOf(`s: ${yaml}`), 'plant.yaml', record('a speed', { s: speed })).value.s;
  for (const yaml of ['unknown', '"unknown"', '{value: unknown}', '{unknown: true}', '{unknown: yes}']) {
    expect(one(yaml)).toEqual({ known: false });
  }
  expect(one('{value: unknown, between: [1 Hz, 2 Hz]}')).toEqual({ known: false, between: { low: 1, high: 2 } });
});

test('a Refusal of the maker gets the place, and a maker may refuse several places', () => {
  const pair = made(
    record('a pair', { names: listOf(withPlace(text('A name')), 'names'), size: optionally(count('Size')) }),
    ({ names, size }, placed, refuse) => {
      if (size === 1) throw new Refusal({ read: '1', expected: 'a pair' });
      const strangers = names.filter((name) => name.value.startsWith('x'));
      for (const name of strangers) refuse(name.at, { read: name.value, expected: 'a known name' });
      return strangers.length > 0 ? refuse(placed, { read: 'strangers', expected: 'friends' }) : names.length;
    },
  );
  const attempt = (yaml: string) => readYaml(bytesOf(yaml), 'pairs.yaml', listOf(pair, 'pairs'));
  expect(attempt('- names: [a, b]').value).toEqual([2]);
  const { refusals } = refused(() => attempt('- names: [a]\n  size: 1\n- names: [xa, b, xc]\n'));
  expect(refusals.map(({ line, column, path }) => `${line}:${column} ${path}`)).toEqual([
    ...['1:3 1', '3:3 2', '3:11 2/names/1', '3:18 2/names/3'],
  ]);
});

test('kinds by readers of their own, and a mapping by name', () => {
  const shape = byKind('a shape', [
    kindReader('circle', record('a circle', { diameter: plain(quantityField('length', 'Diameter')) })),
    kindReader('square', record('a square', { side: plain(quantityField('length', 'Side')), hollow: flag('Hollow') })),
  ]);
  const shapes = mapOf(shape, 'shapes by name');
  const { value } = readYaml(
    bytesOf('a: {kind: circle, diameter: 2 m}\nb: {side: 1 m, kind: square, hollow: no}'),
    'x',
    shapes,
  );
  expect([...value]).toEqual([
    ['a', { kind: 'circle', diameter: 2 }],
    ['b', { kind: 'square', side: 1, hollow: false }],
  ]);
  expectTypeOf<ReadBy<typeof shape>['kind']>().toEqualTypeOf<'circle' | 'square'>();
  const { message } = refused(() => readYaml(bytesOf('a: {kind: circle, side: 1 m}'), 'x', shapes));
  expect(message).toContain('expected a key of a circle: diameter');
});

test('a key belongs to one part of a record: a second is our own mistake', () => {
  const twice = () => record('x', { power: text('p'), motor: beside(sheet(motorFields, 'motor')) });
  expect(twice).toThrow('a key belongs to one part of a record');
});

test('a field of a sheet is refused where its faulty point stands', () => {
  const yaml =
    'machines: {}\nsensors:\n  V:\n    kind: moving-coil\n    noise:\n      1 Hz: 8 nm/s/rtHz\n      5 mm: 8 nm/s/rtHz\n';
  expect(at(yaml)).toEqual(['7:7 5 mm']);
});
