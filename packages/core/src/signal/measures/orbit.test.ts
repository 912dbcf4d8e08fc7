import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { complex } from '../complex.ts';
import { measured } from './gathering.ts';
import { blocksOf, evenNoise, madeTone } from './made-record.ts';
import { orbitExtent, phasorOf, shaftVectors, whirl, withoutSlowRoll } from './orbit.ts';
import { toneAt } from './tone.ts';

const quarter = Math.PI / 2;
const square = { first: 0, second: quarter };
const angle = fc.double({ min: -3, max: 3, noNaN: true });
const size = fc.double({ min: 0.01, max: 5, noNaN: true });

test('law: two circles make the ellipse, and whirl finds them, seen by probes at any angle', () => {
  fc.assert(
    fc.property(size, size, angle, angle, angle, (f, b, phaseF, phaseB, at) => {
      const angles = { first: at, second: at + 1.3 };
      // u_i(t) = f·cos(ωt + φf − α) + b·cos(ωt − φb + α), the shaft at F·e^(jωt) + B·e^(−jωt).
      const seen = (alpha: number) =>
        complex(
          f * Math.cos(phaseF - alpha) + b * Math.cos(alpha - phaseB),
          f * Math.sin(phaseF - alpha) + b * Math.sin(alpha - phaseB),
        );
      const vectors = shaftVectors(seen(angles.first), seen(angles.second), angles);
      const found = whirl(vectors, 'anticlockwise');
      expect(found.forward).toBeCloseTo(f, 8);
      expect(found.backward).toBeCloseTo(b, 8);
      expect(found.major).toBeCloseTo(f + b, 8);
      expect(found.minor).toBeCloseTo(Math.abs(f - b), 8);
      expect(Math.sin(found.inclination - (phaseF + phaseB) / 2)).toBeCloseTo(0, 6);
      expect(whirl(vectors, 'clockwise')).toMatchObject({ forward: found.backward, backward: found.forward });
    }),
  );
});

test('law: y a quarter turn after x goes anticlockwise, which is forward for a shaft that turns so', () => {
  const [x, y] = [madeTone(1000, 0.01, 3), madeTone(1000, 0.01, 3, -quarter)];
  const phasors = [x, y].map((record) => {
    const tone = measured(toneAt(10, 1000), record);
    if (!tone.known) throw new Error('expected to be known');
    return phasorOf(tone.value);
  });
  const vectors = shaftVectors(phasors[0]!, phasors[1]!, square);
  expect(whirl(vectors, 'anticlockwise')).toMatchObject({ precession: 'forward' });
  expect(whirl(vectors, 'clockwise')).toMatchObject({ precession: 'backward' });
  expect(whirl(vectors, 'anticlockwise').forward).toBeCloseTo(3, 8);
  expect(whirl(shaftVectors(phasors[0]!, complex(0, 0), square), 'clockwise').precession).toBe('on a line');
});

test('law: runout taken off leaves the motion', () => {
  const [motion, runout] = [complex(3, -4), complex(0.5, 0.2)];
  const left = withoutSlowRoll(complex(3.5, -3.8), runout);
  expect(left.re).toBeCloseTo(motion.re, 12);
  expect(left.im).toBeCloseTo(motion.im, 12);
});

test('law: the extent is that of every place looked at, however it is cut, and the means are the gaps', () => {
  fc.assert(
    fc.property(
      fc.integer(),
      fc.integer({ min: 2, max: 12_000 }),
      fc.integer({ min: 1, max: 999 }),
      (seed, length, cut) => {
        const x = evenNoise(seed, length).map((value, n) => value ** 3 + Math.cos(n / 50) - 8);
        const y = evenNoise(seed + 1, length).map((value, n) => value + 2 * Math.sin(n / 50) - 9);
        const pieces = orbitExtent(square);
        const [xs, ys] = [blocksOf(x, cut, 1), blocksOf(y, cut, 1)];
        for (const [k, block] of xs.entries()) pieces.take(block, ys[k]!);
        const found = pieces.result();
        if (!found.known) throw new Error('expected to be known');
        const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / length;
        const [mx, my] = [mean(x), mean(y)];
        let sMax = 0;
        for (let n = 0; n < length; n++) sMax = Math.max(sMax, Math.hypot(x[n]! - mx, y[n]! - my));
        expect(found.value.sMax).toBeCloseTo(sMax, 9);
        expect(found.value.firstGap).toBeCloseTo(mx, 9);
        expect(found.value.y).toBeCloseTo(my, 9);
        const whole = orbitExtent(square);
        whole.take(x, y);
        expect(whole.result()).toEqual(found);
      },
    ),
    { numRuns: 30 },
  );
});

test('law: a circle of radius 2 seen at ±45° has S_max 2 and a peak-to-peak of 4 in every direction', () => {
  const angles = { first: Math.PI / 4, second: (3 * Math.PI) / 4 };
  const extent = orbitExtent(angles);
  extent.take(madeTone(5000, 0.001, 2, 0.3), madeTone(5000, 0.001, 2, 0.3 - quarter));
  const found = extent.result();
  if (!found.known) throw new Error('expected to be known');
  expect(found.value.sMax).toBeCloseTo(2, 9);
  expect(found.value.peakToPeakMax).toBeCloseTo(4, 4);
  expect(found.value.firstPeakToPeak).toBeCloseTo(4, 4);
});

test('samples that are no numbers are left out of both channels; probes side by side are refused', () => {
  const extent = orbitExtent(square);
  extent.take(Float64Array.of(1, Number.NaN, 3), Float64Array.of(1, 900, 3));
  expect(extent.result()).toMatchObject({
    known: true,
    value: { samples: 2, notFinite: 1, secondGap: 2, peakToPeakMax: Math.hypot(2, 2) },
  });
  const empty = orbitExtent(square);
  expect(empty.result().known).toBe(false);
  expect(() => orbitExtent({ first: 0, second: Math.PI })).toThrow(Broken);
  expect(() => orbitExtent(square).take(new Float64Array(1), new Float64Array(2))).toThrow(Broken);
});
