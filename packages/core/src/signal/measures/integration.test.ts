import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { complex, magnitude, phase, product, quotient } from '../complex.ts';
import { highPass } from '../filters.ts';
import { measured } from './gathering.ts';
import { integratedDensity, integration, integrationResponse } from './integration.ts';
import { blocksOf, evenNoise, madeTone } from './made-record.ts';
import { densityRms, powerDensity } from './power-density.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
).integration;

test('independent: velocity and displacement of three tones, integrated by hand and high-passed by scipy', () => {
  const { rate, samples, corner, cases } = stored;
  const record = Float64Array.from({ length: samples }, (_, n) => {
    const t = n / rate;
    return (
      9.81 +
      3 * Math.cos(2 * Math.PI * 25 * t) +
      8 * Math.sin(2 * Math.PI * 120 * t) +
      Math.cos(2 * Math.PI * 700 * t + 1)
    );
  });
  for (const { times, order, last } of cases) {
    const running = integration({ rate, times, corner, order });
    const ours = running.through(record);
    const size = Math.max(...last.map(Math.abs));
    for (const [k, value] of last.entries()) {
      // The stored values end `delay` samples before the record: ours are later by it.
      const at = samples - last.length + k;
      expect(Math.abs(ours[at]! - value), `${times} times, order ${order}`).toBeLessThan(2e-4 * size);
    }
  }
});

test('law: the response is H_hp/(j2πf)^times, as near as is stated', () => {
  const rate = 10_000;
  for (const [times, order] of [
    [1, 2],
    [1, 4],
    [2, 4],
    [2, 3],
  ] as const) {
    for (const [place, within] of [
      [0.02, 1e-5],
      [0.15, 1.5e-5],
      [0.2, 3.2e-4],
      [0.25, 3.4e-3],
    ] as const) {
      const f = place * rate;
      const ours = integrationResponse({ rate, times, corner: 10, order }, f);
      const j = complex(0, 2 * Math.PI * f);
      const exact = quotient(highPass(f, 10, order), times === 1 ? j : product(j, j));
      expect(Math.abs(magnitude(ours) / magnitude(exact) - 1), `${times} times at ${place}`).toBeLessThan(
        times * within,
      );
      expect(Math.abs(Math.sin(phase(ours) - phase(exact)))).toBeLessThan(4e-3);
    }
  }
});

test('law: a direct component leaves nothing, neither drift nor offset, over a long record', () => {
  const running = integration({ rate: 1000, times: 2, corner: 2, order: 4 });
  let greatest = 0;
  for (let k = 0; k < 50; k++) {
    for (const x of running.through(new Float64Array(10_000).fill(9.81))) greatest = Math.max(greatest, Math.abs(x));
  }
  expect(greatest).toBeLessThan(1e-9);
});

test('law: how a record is cut changes nothing', () => {
  const record = evenNoise(2, 4000);
  const settings = { rate: 1000, times: 2, corner: 5, order: 3 } as const;
  const running = integration(settings);
  const pieces = blocksOf(record, 1, 2, 3, 500).flatMap((block) => [...running.through(block)]);
  expect(Float64Array.from(pieces)).toEqual(integration(settings).through(record));
});

test('law: a tone integrated as a record and as a density has the rms of the formula', () => {
  const [rate, f] = [8192, 160];
  const density = measured(
    powerDensity({ rate, length: 4096, window: 'hann', overlap: 0.5, detrend: 'mean' }),
    madeTone(40_960, f / rate, 10),
  );
  if (!density.known) throw new Error('expected to be known');
  const velocity = integratedDensity(density.value, 1, 10);
  expect(densityRms(velocity, 100, 220)).toBeCloseTo((10 * Math.SQRT1_2) / (2 * Math.PI * f), 5);
  const back = integratedDensity(velocity, -1, 10);
  for (let k = 10; k < 2000; k++) expect(back.density[k]).toBeCloseTo(density.value.density[k]!, 9);
  expect(velocity.density[4]).toBe(0);
});

test('negative: a high-pass that does not outdo the integration', () => {
  expect(() => integration({ rate: 1000, times: 2, corner: 5, order: 2 })).toThrow(Broken);
});
