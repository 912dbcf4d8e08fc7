import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coincidences, comparableLines } from './coincidences.ts';
import { waterPump } from './example-pump.ts';
import { readTrain, type TypedElement, type TypedTrain } from './reading.ts';

const pump = readTrain(waterPump);

function withMotor(changed: Readonly<Record<string, string | number>>): TypedTrain {
  const { motor } = waterPump.elements;
  return { ...waterPump, elements: { ...waterPump.elements, motor: { ...motor, ...changed } as TypedElement } };
}

test('printed: 4 × shaft and 2 × line of the pump differ by pole pass, 0.933 Hz at 50 Hz and 0.2333 Hz at 25 Hz (scenario S01)', () => {
  const found = coincidences(pump).find(({ b }) => b.line.name === 'motor/twice-line')!;
  expect(found.a).toMatchObject({ harmonic: 4 });
  expect(found.a.line.name).toBe('motor/1x');
  expect(found.separable).toBe('everywhere');
  expect(found.differBy).toBe('motor/pole-pass');
  const [lowest, highest] = found.states;
  expect(lowest).toMatchObject({ state: 'lowest', at: 25 });
  expect(lowest!.difference).toBeCloseTo(0.2333, 4);
  expect(highest!.difference).toBeCloseTo(0.933, 3);
  // df ≤ pole pass / 3, the rule of the acquisition table of the same scenario: 0.311 and 0.0778 Hz.
  expect(highest!.resolution).toBeCloseTo(0.9333 / 3, 4);
  expect(lowest!.recordLength).toBeCloseTo(3 / 0.23333, 2);
  expect(found.nearest.at).toBe(25);
});

test('printed: 2-pole motor at 3580 r/min and 60 Hz needs 0.667 Hz between 2 × speed and 2 × line (computed by another)', () => {
  const train = readTrain({
    of: 'P-2',
    shafts: ['motor'],
    elements: { motor: { kind: 'induction-motor', on: 'motor', poles: 2, supply: 'mains', 'line-frequency': '60 Hz' } },
    operation: { shaft: 'motor', speed: '3580 r/min' },
  });
  const found = coincidences(train).find(({ b }) => b.line.name === 'motor/twice-line')!;
  expect(found.nearest.difference).toBeCloseTo(0.667, 3);
  expect(found.differBy).toBe('motor/pole-pass');
});

test('law: whatever poles and slip, order p and twice line differ by pole pass everywhere', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 20 }), (pairs, slip) => {
      const train = readTrain(withMotor({ poles: 2 * pairs, 'rated-slip': `${slip} r/min` }));
      const found = coincidences(train, { within: 0.05 }).find(
        ({ a, b }) => a.line.name === 'motor/1x' && b.line.name === 'motor/twice-line',
      )!;
      expect(found.a.harmonic).toBe(2 * pairs);
      expect(found.differBy).toBe('motor/pole-pass');
      expect(found.states[1]!.difference).toBeCloseTo((2 * pairs * slip) / 60, 9);
    }),
    { numRuns: 40 },
  );
});

test('two lines that cross are given with the place where they cross, where no resolution separates them', () => {
  // 10 vanes on the mains side against a carrier: 10 × f = 400 Hz at 40 Hz of shaft speed.
  const train = readTrain({
    of: 'F-1',
    shafts: ['fan'],
    elements: {
      wheel: { kind: 'impeller', on: 'fan', vanes: 10 },
      motor: {
        kind: 'induction-motor',
        on: 'fan',
        poles: 2,
        supply: 'converter',
        'line-frequency': '50 Hz',
        'rated-slip': '30 r/min',
        'torque-law': 'constant',
        carrier: '400 Hz',
      },
    },
    operation: { shaft: 'fan', speed: '30..49 Hz' },
  });
  const found = coincidences(train).find(
    ({ a, b }) =>
      a.line.name === 'motor/carrier' || (b.line.name === 'motor/carrier' && a.line.name === 'wheel/vane-pass'),
  )!;
  const crossing = coincidences(train).find(
    ({ a, b }) =>
      [a, b].every(({ harmonic }) => harmonic === 1) &&
      [a, b].some(({ line }) => line.name === 'motor/carrier') &&
      [a, b].some(({ line }) => line.name === 'wheel/vane-pass'),
  )!;
  expect(found).toBeDefined();
  expect(crossing.separable).toBe('not everywhere');
  expect(crossing.crossings).toHaveLength(1);
  expect(crossing.crossings[0]).toBeCloseTo(40, 9);
  expect(crossing.nearest.difference).toBe(0);
  expect(crossing.nearest.recordLength).toBeUndefined();
  // Within 1 % of the higher line: 10·f from 396 to 400/0.99 Hz.
  expect(crossing.close).toHaveLength(1);
  expect(crossing.close[0]!.low).toBeCloseTo(39.6, 6);
  expect(crossing.close[0]!.high).toBeCloseTo(400 / 0.99 / 10, 6);
});

test('equal bearings at two places are one line at every speed: told apart by place, not by spectrum', () => {
  const { 'pump-drive-end': bearing } = waterPump.elements;
  const train = readTrain({ ...waterPump, elements: { ...waterPump.elements, 'pump-far-end': bearing! } });
  const never = coincidences(train).filter(({ separable }) => separable === 'never');
  expect(never.map(({ a, b }) => [a.line.name, b.line.name])).toContainEqual([
    'pump-drive-end/cage',
    'pump-far-end/cage',
  ]);
  for (const each of never) {
    expect([each.a.harmonic, each.b.harmonic]).toEqual([1, 1]);
    expect(each.instead).toContain('both places');
  }
});

test('vane pass is not reported beside the order of the shaft that it is by definition', () => {
  for (const { a, b } of coincidences(pump, { harmonics: 10 })) {
    expect([a.line.name, b.line.name].sort()).not.toEqual(['impeller/vane-pass', 'motor/1x']);
  }
});

test('lines that are not known are named, not left out in silence', () => {
  const train = readTrain(withMotor({ 'torque-law': 'unknown' }));
  const { compared, notCompared } = comparableLines(train);
  expect(compared.map((line) => line.name)).toContain('motor/twice-line');
  const polePass = notCompared.find(({ line }) => line.name === 'motor/pole-pass')!;
  expect(polePass.missing).toEqual([{ of: 'P-301/motor', what: 'torque law' }]);
  expect(coincidences(train).some(({ a }) => a.line.name === 'motor/1x')).toBe(false);
});
