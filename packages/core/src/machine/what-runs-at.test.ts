import { expect, test } from 'vitest';
import { answer } from '../quantity/index.ts';
import { waterPump } from './example-pump.ts';
import { frequencyLines } from './frequency-line.ts';
import { readTrain } from './reading.ts';
import { solvedTrain } from './solved-train.ts';
import { speedMap } from './speed-map.ts';
import { operatingStates, stateAt } from './state.ts';
import { whatRunsAt } from './what-runs-at.ts';

const pump = readTrain(waterPump);
const solved = solvedTrain(pump);
const [lowest, highest] = operatingStates(solved);

const named = (frequency: number, options = {}) =>
  whatRunsAt(pump, frequency, highest!, options).candidates.map(({ line, harmonic }) => `${harmonic} × ${line.name}`);

test('printed: frequencies of scenario S01 at 50 Hz lead back to the lines they were given for', () => {
  expect(named(148.6)[0]).toBe('1 × impeller/vane-pass');
  expect(named(990.67)[0]).toBe('1 × motor/rotor-bar-pass');
  expect(named(78.121)).toContain('1 × motor-drive-end/outer-ring');
  expect(named(523.248)).toContain('3 × pump-drive-end/inner-ring');
  expect(named(0.93333)).toEqual(['1 × motor/pole-pass']);
});

test('4 × shaft and twice line are both named where the spectrum does not part them, and one where it does', () => {
  expect(named(99.5)).toEqual(expect.arrayContaining(['4 × motor/1x', '4 × pump/1x', '1 × motor/twice-line']));
  expect(named(100, { tolerance: 0.001 })).toContain('1 × motor/twice-line');
  expect(named(100, { tolerance: 0.001 })).not.toContain('4 × motor/1x');
});

test('a bearing line is found within its slip band, and said to be found there only', () => {
  const { candidates } = whatRunsAt(pump, 122.784 * 0.985, highest!);
  const ring = candidates.find(({ line }) => line.name === 'pump-drive-end/outer-ring')!;
  expect(ring.within).toBe('slip');
  expect(ring.relative).toBeCloseTo(-0.015, 6);
  expect(named(122.784 * 0.97)).not.toContain('1 × pump-drive-end/outer-ring');
});

test('of one element and one frequency the lowest multiple is named: 2x, not twice 1x', () => {
  expect(named(49.533)).toContain('1 × motor/2x');
  expect(named(49.533)).not.toContain('2 × motor/1x');
  expect(named(49.533)).not.toContain('4 × motor/half-order');
});

test('law: every line is among what may run at its own frequency, in every state', () => {
  for (const state of [lowest!, highest!, stateAt(solved, answer(37.3), 'between')]) {
    for (const line of frequencyLines(solved)) {
      const table = whatRunsAt(pump, frequencyOf(line, state), state);
      expect(table.candidates.map((each) => each.line.name)).toContain(line.name);
      expect(table.notCompared).toEqual([]);
    }
  }
});

function frequencyOf(line: ReturnType<typeof frequencyLines>[number], state: typeof lowest & {}): number {
  const found = whatRunsAt(pump, 1, state, { tolerance: 1e9 }).candidates.find(
    (each) => each.line.name === line.name && each.harmonic === 1,
  );
  return found!.expected;
}

test('the speed map draws every known line over the range and names those it cannot', () => {
  const map = speedMap(pump, { harmonics: 3, steps: 10 });
  if (!map.known) throw new Error('known');
  expect(map.value.along).toEqual({ by: 'line', name: 'motor', low: 25, high: 50 });
  expect(map.value.left).toEqual([]);
  const third = map.value.lines.find(({ line, harmonic }) => line.name === 'impeller/vane-pass' && harmonic === 3)!;
  expect(third.points).toHaveLength(11);
  expect(third.points.at(-1)!.frequency).toBeCloseTo(3 * 148.6, 9);
  const outer = map.value.lines.find(({ line }) => line.name === 'pump-drive-end/outer-ring')!.points[0]!;
  expect(outer.low / outer.frequency).toBeCloseTo(0.98, 12);
  const unknown = readTrain({
    ...waterPump,
    elements: { ...waterPump.elements, impeller: { kind: 'impeller', on: 'pump', vanes: 'unknown' } },
  });
  const partial = speedMap(unknown);
  expect(partial.known && partial.value.left).toEqual(['impeller/vane-pass']);
  const nowhere = readTrain({ ...waterPump, operation: { motor: 'motor', frequency: 'unknown' } });
  expect(speedMap(nowhere)).toEqual({ known: false, missing: [{ of: 'P-301', what: 'operating line frequency' }] });
});
