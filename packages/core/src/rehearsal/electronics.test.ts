import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { complex, product, reciprocal } from '../signal/complex.ts';
import { highPass } from '../signal/filters.ts';
import { drivenOutput } from './electronics.ts';
import { SpectralFilter } from './spectral.ts';

const transient = JSON.parse(
  readFileSync(resolve(import.meta.dirname, '../../../../evidence/rehearsal/transient.json'), 'utf8'),
) as { readonly rate: number; readonly volts: readonly number[] };

/** The wave that the netlist makes, by the same formula. */
const wave = (t: number) =>
  14 * Math.sin(2 * Math.PI * 160 * t) * Math.exp(-(((t - 0.06) / 0.02) ** 2)) +
  5 * Math.sin(2 * Math.PI * 8000 * t) * Math.exp(-(((t - 0.15) / 0.004) ** 2));

const times = 8;
const rate = 409_600;
const limits = { top: 9, bottom: 8, slew: 3e-3 / 30e-9, recovery: 5 };

function rehearsed(recovery: number): Float64Array {
  const input = Float64Array.from({ length: 0.2 * rate }, (_, index) => wave(index / rate));
  const filter = new SpectralFilter(input.length, rate, 1);
  const wanted = filter.through(input, (f) => highPass(f, 5, 1), 0);
  const driven = drivenOutput(wanted, rate, { ...limits, recovery }, 0);
  expect(driven.atTop).toBeGreaterThan(0);
  expect(driven.atBottom).toBeGreaterThan(0);
  expect(driven.slewed).toBeGreaterThan(0);
  const line = (f: number) => reciprocal(complex(1, 2 * Math.PI * f * 100 * 30e-9));
  return filter.through(driven.samples, (f) => product(line(f), highPass(f, 1, 1)), 0);
}

/** Root of the mean square of the difference, over the largest volts of the simulator. */
function apart(ours: Float64Array, from: number, to: number): number {
  let [sum, count] = [0, 0];
  for (let index = Math.round(from * transient.rate); index < to * transient.rate; index++) {
    sum += (ours[index * times]! - transient.volts[index]!) ** 2;
    count += 1;
  }
  return Math.sqrt(sum / count) / 9;
}

test('independent: clipping at both rails, recovery and slew follow the transient of a circuit simulator', () => {
  const ours = rehearsed(5);
  expect(transient.rate).toBeCloseTo(rate / times, 0);
  expect(apart(ours, 0.02, 0.1)).toBeLessThan(0.01);
  // After the overload, where only what was left in the element decays.
  expect(apart(ours, 0.11, 0.13)).toBeLessThan(0.005);
  expect(apart(ours, 0.14, 0.16)).toBeLessThan(0.01);
});

test('negative: without the recovery the simulator is not met after the overload', () => {
  expect(apart(rehearsed(0), 0.11, 0.13)).toBeGreaterThan(2 * apart(rehearsed(5), 0.11, 0.13));
});
