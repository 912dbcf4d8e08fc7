import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showMeasure } from '../finding/measure.ts';
import { trainFindings } from './findings.ts';
import { readTrain, type TypedElement, type TypedTrain } from './reading.ts';
import { oneElement } from './rules/example-trains.ts';
import { speedMap } from './speed-map.ts';

const fan = (
  speed: string,
  others: Readonly<Record<string, TypedElement>>,
  wheel: TypedElement = { kind: 'impeller', on: 'fan', vanes: 12 },
): TypedTrain => {
  const train = oneElement(wheel);
  return { ...train, elements: { wheel, ...others }, operation: { shaft: 'fan', speed } };
};

const mapOf = (train: TypedTrain, options = {}) => {
  const map = speedMap(readTrain(train), options);
  if (!map.known) throw new Error(JSON.stringify(map.missing));
  return map.value;
};

const mode = (frequency: string, quality?: number): TypedElement => ({
  kind: 'structural-mode',
  frequency,
  ...(quality === undefined ? {} : { quality }),
});

test('an order that runs through a mode is given between the speeds at which it enters and leaves the band', () => {
  const map = mapOf(fan('900..1500 r/min', { base: mode('19..21 Hz') }));
  const [first] = map.meetings;
  expect(first).toMatchObject({ harmonic: 1, nearest: { relative: 0 } });
  expect([first!.order.name, first!.standing.name]).toEqual(['fan/1x', 'base/mode']);
  expect(first!.inside).toHaveLength(1);
  expect(first!.inside[0]!.low).toBeCloseTo(19, 6);
  expect(first!.inside[0]!.high).toBeCloseTo(21, 6);
});

test('law: the half-power width of a mode is its frequency over its quality, whatever both are', () => {
  fc.assert(
    fc.property(fc.double({ min: 16, max: 24, noNaN: true }), fc.integer({ min: 10, max: 200 }), (hertz, quality) => {
      const map = mapOf(fan('600..1800 r/min', { base: mode(`${hertz} Hz`, quality) }));
      const found = map.meetings.find(({ order }) => order.name === 'fan/1x')!;
      expect(found.inside[0]!.high - found.inside[0]!.low).toBeCloseTo(hertz / quality, 5);
    }),
    { numRuns: 30 },
  );
});

test('a mode nobody knows the width of is met at one speed, between two steps as well as on one', () => {
  for (const hertz of [17, 20, 20.137]) {
    const found = mapOf(fan('900..1500 r/min', { base: mode(`${hertz} Hz`) })).meetings[0]!;
    expect(found.inside).toHaveLength(1);
    expect(found.inside[0]!.low).toBeCloseTo(hertz, 6);
    expect(found.inside[0]!.high).toBeCloseTo(hertz, 6);
  }
});

test('an order that stays away is reported with its distance, where it is nearer than asked', () => {
  const map = mapOf(fan('900..1500 r/min', { base: mode('28 Hz') }));
  const near = map.meetings.find(({ order }) => order.name === 'fan/1x')!;
  expect(near.inside).toEqual([]);
  expect(near.nearest).toMatchObject({ at: 25 });
  expect(near.nearest.relative).toBeCloseTo(1 - 25 / 28, 9);
  const farther = mapOf(fan('900..1500 r/min', { base: mode('28 Hz') }), { distance: 0.1 });
  expect(farther.meetings.some(({ order }) => order.name === 'fan/1x')).toBe(false);
});

test('twice the frequency of the mains stands still, that of a converter does not', () => {
  const motor = (supply: string): TypedElement => ({
    kind: 'synchronous-motor',
    on: 'fan',
    poles: 2,
    supply,
    'line-frequency': '50 Hz',
  });
  const mains = mapOf(fan('2985..3015 r/min', { motor: motor('mains') }), { harmonics: 3 });
  const converter = mapOf(fan('2985..3015 r/min', { motor: motor('converter') }), { harmonics: 3 });
  expect(converter.meetings).toEqual([]);
  // A synchronous motor cannot run off 3000 r/min at the mains, so its line is taken from its shaft.
  expect(mains.meetings).toEqual([]);
  const carrier = { ...motor('converter'), carrier: '600 Hz' };
  const meets = mapOf(fan('2700..3300 r/min', { motor: carrier }));
  const found = meets.meetings.find(({ order }) => order.name === 'wheel/vane-pass')!;
  expect(found.standing.name).toBe('motor/carrier');
  expect(found.inside[0]!.low).toBeCloseTo(50, 6);
});

test('a critical speed is met by once per turn of its shaft, and the finding says at which speeds', () => {
  const train = fan('3000..5000 r/min', {
    first: { kind: 'critical-speed', on: 'fan', speed: '4100..4200 r/min' } as TypedElement,
  });
  const found = trainFindings(readTrain(train));
  expect(found.map((each) => each.rule)).toEqual(['machine/mode-in-range']);
  expect(showMeasure(found[0]!.found ?? '')).toBe('fan/1x lies in it from 4100..4200 r/min of fan');
  const away = fan('3000..4000 r/min', {
    first: { kind: 'critical-speed', on: 'fan', speed: '4100..4200 r/min' } as TypedElement,
  });
  expect(trainFindings(readTrain(away))).toEqual([]);
});

test('a mode of no known frequency is left out by name', () => {
  const map = mapOf(fan('900..1500 r/min', { base: { kind: 'structural-mode', frequency: 'unknown' } }));
  expect(map.left).toEqual(['base/mode']);
});
