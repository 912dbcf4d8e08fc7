import fc from 'fast-check';
import { expect, test } from 'vitest';
import { examplePoint } from '../demand/rules/example.ts';
import { showMeasure } from '../finding/measure.ts';
import { frequencyTable } from '../machine/frequency-table.ts';
import { readTrain, type TypedElement } from '../machine/reading.ts';
import { planetaryTrain } from '../machine/rules/example-trains.ts';
import { answer, type Fraction, fraction, toNumber } from '../quantity/index.ts';
import { phaseSkew, type Running, ratioDrift, settingsFor, wholeTurns } from './index.ts';

const { point: line } = examplePoint();
const { point: burst } = examplePoint({ observe: 'burst' });
const listening = (hears: readonly string[], point = line) => ({ ...point, hears });

const turbine = (changed: Readonly<Record<string, TypedElement>> = {}) => {
  const stage = planetaryTrain({});
  const gear = (from: string, to: string, driving: number, driven: number): TypedElement => ({
    kind: 'gear-pair',
    from,
    to,
    'driving-teeth': driving,
    'driven-teeth': driven,
  });
  return frequencyTable(
    readTrain({
      ...stage,
      shafts: ['rotor', 'sun', 'middle', 'fast'],
      elements: {
        ...stage.elements,
        second: gear('sun', 'middle', 98, 24),
        third: gear('middle', 'fast', 104, 25),
        mark: { kind: 'phase-reference', on: 'fast', pulses: 2 },
        ...changed,
      },
    }),
  );
};

const setOf = (name: string, ...of: Parameters<typeof settingsFor>) => {
  const found = settingsFor(...of);
  const set = found.sets.find((each) => each.name === name);
  if (set === undefined) throw new Error(`${name} of ${found.sets.map((each) => each.name)}; ${found.unknown}`);
  return set;
};

test('printed: the planetary mesh of the reference turbine by the clock: 200 Hz, 3200 lines, and 1 % of speed smears it over 20.5 lines (computed by its author)', () => {
  const running: Running = { wander: answer(0.01) };
  const set = setOf('planetary-mesh', listening(['stage']), turbine(), running);
  expect(set).toMatchObject({ highestFrequency: 200, lines: 3200, resolution: 0.0625 });
  expect(set.smear!.hertz).toBeCloseTo(1.28, 2);
  expect(set.smear!.lines).toBeCloseTo(20.5, 1);
  expect(set.reasons.map((each) => showMeasure(each)).join()).toContain('only a record counted in turns');
  expect(setOf('planetary-mesh', listening(['stage']), turbine())).not.toHaveProperty('smear');
});

test('printed: 30 turns of the carrier are 2912 turns of the fast shaft, 116.1 s and 211.8 s; 97.07 for 1456/15 drifts 0.371° (computed by its author)', () => {
  const set = setOf('planetary-turns', listening(['stage']), turbine());
  expect(set.recordLength).toBeCloseTo(116.1, 1);
  const { orders } = set;
  expect(orders).toMatchObject({ turns: 30, of: 'carrier of stage', by: { shaft: 'fast', ratio: fraction(1456, 15) } });
  expect(orders!.by!.turns).toBe(2912);
  expect(orders!.by!.rounded.ratio).toBe(97.07);
  expect(orders!.by!.rounded.drift).toBeCloseTo(0.371, 3);
  expect(orders!.longest).toBeCloseTo(211.8, 1);
  // Of mesh phase: 99 times the drift.
  expect(set.reasons.map((each) => showMeasure(each)).join()).toContain('36.7° of mesh phase');
});

test('negative: without a phase reference, or behind a belt that slips, turns cannot be counted and it says so', () => {
  const stage = planetaryTrain({});
  const without = settingsFor(listening(['stage']), frequencyTable(readTrain(stage)));
  expect(without.sets.map(({ name }) => name)).not.toContain('planetary-turns');
  expect(without.unknown.join()).toContain('no phase reference');
  const belt = {
    kind: 'belt-drive',
    from: 'fast',
    to: 'pump',
    'driving-diameter': '180 mm',
    'driven-diameter': '355 mm',
    'belt-length': '2.5 m',
  };
  const slipping = frequencyTable(
    readTrain({
      ...stage,
      shafts: ['rotor', 'sun', 'pump'],
      elements: {
        ...stage.elements,
        belt: { ...belt, from: 'sun' },
        mark: { kind: 'phase-reference', on: 'pump', pulses: 1 },
      },
    }),
  );
  expect(settingsFor(listening(['stage']), slipping).unknown.join()).toContain('does not keep step');
});

test('law: whole turns hold the least asked for, come out whole for both shafts, and no fewer do', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 1, max: 4000 }),
      fc.integer({ min: 1, max: 60 }),
      (least, numerator, denominator) => {
        const ratio: Fraction = fraction(numerator, denominator);
        const turns = wholeTurns(least, ratio);
        expect(turns).toBeGreaterThanOrEqual(least);
        expect((BigInt(turns) * ratio.numerator) % ratio.denominator).toBe(0n);
        expect(turns - Number(ratio.denominator)).toBeLessThan(least);
        expect(ratioDrift(ratio, toNumber(ratio), turns)).toBe(0);
      },
    ),
  );
});

const screen = (speed = '920 r/min') =>
  frequencyTable(
    readTrain({
      of: 'SC-7',
      shafts: ['exciter'],
      elements: {
        exciter: { kind: 'screen-exciter', on: 'exciter', stroke: '9 mm pp' },
        springs: { kind: 'structural-mode', frequency: '2..4 Hz' },
      },
      operation: { shaft: 'exciter', speed },
    }),
  );

const strokePoint = { ...line, targets: line.targets.map((each) => ({ ...each, motion: 'displacement' as const })) };

test('printed: the stroke of the reference screen, 200 Hz, 400 lines, 2 s, 5.52° a millisecond, less than 0.6 % from the filter (computed by its author)', () => {
  const set = setOf('motion-path', strokePoint, screen());
  expect(set).toMatchObject({ highestFrequency: 200, lines: 400, resolution: 0.5, recordLength: 2 });
  expect(set.integration).toMatchObject({ corner: 5, order: 2 });
  expect(Math.abs(set.integration!.error)).toBeLessThan(0.006);
  expect(phaseSkew(920 / 60, 1e-3)).toBeCloseTo(5.52, 2);
  expect(set.reasons.map((each) => showMeasure(each)).join()).toContain('5.52°');
  // An acceleration line of the same machine asks for no path.
  expect(settingsFor(line, screen()).sets.map(({ name }) => name)).not.toContain('motion-path');
});

test('law: the corner lies at a third of the slowest stroke or below it, and its error stays below 0.7 %', () => {
  fc.assert(
    fc.property(fc.integer({ min: 300, max: 3000 }), (speed) => {
      const { corner, error } = setOf('motion-path', strokePoint, screen(`${speed} r/min`)).integration!;
      expect(corner).toBeLessThanOrEqual(speed / 60 / 3 + 1e-9);
      expect(corner).toBeGreaterThan(speed / 60 / 3 / 2.5 - 1e-9);
      expect(-error).toBeLessThan(0.007);
    }),
    { numRuns: 60 },
  );
});

test('the modes of a body on its springs keep a record of their own, from half the slowest of them', () => {
  expect(setOf('low-modes', strokePoint, screen())).toMatchObject({ from: 1, highestFrequency: 10 });
});

test('printed: knocks of the reference compressor, 25.6 kHz, 32 turns of 3.84 s, 0.117° a sample, twelve windows (computed by its author)', () => {
  const table = frequencyTable(
    readTrain({
      of: 'C-201B',
      shafts: ['crankshaft'],
      elements: { frame: { kind: 'reciprocating-machine', on: 'crankshaft', throws: 4, acting: 'double' } },
      operation: { shaft: 'crankshaft', speed: '500 r/min' },
    }),
  );
  const knocking = {
    ...burst,
    targets: burst.targets.map((each) => ({ ...each, band: answer({ low: 2000, high: 8000 }) })),
  };
  const set = setOf('crank-waveform', knocking, table);
  expect(set).toMatchObject({ samplingRate: 25_600, samples: 98_304, crank: { turns: 32, windows: 12 } });
  expect(set.recordLength).toBeCloseTo(3.84, 9);
  expect(set.crank!.degreesPerSample).toBeCloseTo(0.117, 3);
});

test('a point that names what it hears takes nothing from the rest of the machine', () => {
  const bearing = (shaft: string): TypedElement => ({
    kind: 'rolling-bearing',
    on: shaft,
    elements: 28,
    'element-diameter': '70 mm',
    'pitch-diameter': '980 mm',
    'contact-angle': '10.5 deg',
  });
  const table = turbine({ main: bearing('rotor'), fastest: bearing('fast') });
  const main = setOf('envelope-spectrum', listening(['main'], burst), table);
  expect(main).toMatchObject({ highestFrequency: 20, lines: 6400, resolution: 0.003125, recordLength: 320 });
  expect(setOf('envelope-spectrum', burst, table).highestFrequency).toBeGreaterThan(1000);
});
