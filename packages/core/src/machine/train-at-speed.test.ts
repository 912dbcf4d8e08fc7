import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coincidences } from './coincidences.ts';
import { waterPump } from './example-pump.ts';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type TypedElement } from './reading.ts';
import { oneElement } from './rules/example-trains.ts';
import { speedMap } from './speed-map.ts';
import type { Train } from './train.ts';
import { trainAtSpeed } from './train-at-speed.ts';

function over(train: Train) {
  const map = speedMap(train);
  return { coincidences: coincidences(train), meetings: map.known ? map.value.meetings : [] };
}

const pump = readTrain(waterPump);
const overPump = over(pump);

test('printed: 4 × shaft and 2 × line of the pump are one pole pass apart, 0.933 Hz at 50 Hz and 0.2333 Hz at 25 Hz (scenario S01)', () => {
  for (const [at, apart, digits] of [
    [50, 0.933, 3],
    [25, 0.2333, 4],
  ] as const) {
    const found = trainAtSpeed(pump, at, overPump).close.find(({ of }) => of.b.line.name === 'motor/twice-line')!;
    expect(found.here.difference).toBeCloseTo(apart, digits);
    expect(found.here.recordLength! * found.here.resolution!).toBeCloseTo(1, 12);
    expect(found.now).toBe(true);
  }
});

test('law: at the ends of the range the lines are those of the frequency table', () => {
  const table = frequencyTable(pump);
  for (const state of table.states) {
    const { lines } = trainAtSpeed(pump, state.at.known ? state.at.value : 0, overPump);
    expect(lines.map((each) => each.line.name)).toEqual(table.rows.map((row) => row.line.name));
    for (const [index, { frequency }] of lines.entries()) {
      const cell = table.rows[index]!.cells.find((each) => each.state === state.name)!;
      expect(frequency).toEqual(cell.frequency);
    }
  }
});

const fan = (mode: string) => {
  const wheel: TypedElement = { kind: 'impeller', on: 'fan', vanes: 12 };
  const base = { kind: 'structural-mode', frequency: mode } as TypedElement;
  return readTrain({
    ...oneElement(wheel),
    elements: { wheel, base },
    operation: { shaft: 'fan', speed: '900..1500 r/min' },
  });
};

test('law: inside the band of a mode the distance is nothing, outside it is that to the nearer edge', () => {
  const train = fan('19..21 Hz');
  const known = over(train);
  fc.assert(
    fc.property(fc.double({ min: 15, max: 25, noNaN: true }), (at) => {
      const found = trainAtSpeed(train, at, known).meetings.find(({ of }) => of.order.name === 'fan/1x')!;
      expect(found.frequency).toBeCloseTo(at, 9);
      expect(found.relative).toBeCloseTo(at < 19 ? 1 - at / 19 : at > 21 ? at / 21 - 1 : 0, 9);
    }),
  );
});

test('negative: what is far from its mode at this speed is not told, though it meets it elsewhere', () => {
  const train = fan('15 Hz');
  const known = over(train);
  expect(known.meetings.some(({ order }) => order.name === 'fan/1x')).toBe(true);
  expect(trainAtSpeed(train, 25, known).meetings.some(({ of }) => of.order.name === 'fan/1x')).toBe(false);
});
