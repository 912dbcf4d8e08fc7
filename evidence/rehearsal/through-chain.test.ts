import { expect, test } from 'vitest';
import { magnitudeOf, motionOrder, throughChain } from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { chainedPoints, motionOf } from './chains.ts';

/** The time-domain chain is held against the prediction that shares its two-ports: what could differ is how it is run. */
const rate = 2 ** 16;
const seconds = 2;
const lead = rate * 2;
const quiet = motionOf({ motion: 'acceleration', rate, samples: new Float64Array(rate), lead: 0 });

const dynamic = chainedPoints().filter(
  ({ point }) => point.appraisal!.prediction.chain.transducer.signal === 'dynamic',
);

/** Amplitude and phase of the motion at a frequency, by least squares of a sine: whole periods need not fit. */
function toneIn(samples: Float64Array, frequency: number, of: number) {
  let [cc, cs, ss, yc, ys] = [0, 0, 0, 0, 0];
  for (let index = 0; index < samples.length; index++) {
    const angle = (2 * Math.PI * frequency * index) / of;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    cc += c * c;
    cs += c * s;
    ss += s * s;
    yc += samples[index]! * c;
    ys += samples[index]! * s;
  }
  const d = cc * ss - cs * cs;
  const [a, b] = [(yc * ss - ys * cs) / d, (ys * cc - yc * cs) / d];
  return { re: a, im: -b };
}

const frequencies = [10, 47, 320, 1900, 8000];

test.each(dynamic.map((each) => [each.name, each] as const))(
  'law: small sines through the chain of %s are what the prediction says, in size and phase',
  (_name, { point }) => {
    const { prediction } = point.appraisal!;
    const response = prediction.response;
    // What a data sheet or a drawing leaves open leaves the record open too.
    if (!response.known || (prediction.drive?.known ?? true) === false) {
      expect(throughChain(prediction, quiet, { seed: 1, recordRate: rate }).known).toBe(false);
      return;
    }
    const { senses, reference } = prediction.chain.transducer;
    const motion = reference === 'casing' ? 'acceleration' : 'displacement';
    const order = motionOrder[senses] - motionOrder[motion];
    const lines = frequencies
      .map((frequency) => ({ frequency, expected: response.value(frequency) }))
      .filter(({ expected }) => magnitudeOf(expected) > 0.01)
      .map((each) => ({
        ...each,
        // A twentieth of a volt each at the source: nothing clips.
        sensed: 0.05 / known(prediction.chain.sensitivity) / Math.max(1, magnitudeOf(each.expected)),
      }));
    const samples = Float64Array.from({ length: lead + seconds * rate }, (_, index) => {
      const t = (index - lead) / rate;
      const rise = Math.min(1, index / (lead / 2));
      return lines.reduce(
        (sum, { frequency: f, sensed }) =>
          sum + ((rise * sensed) / (2 * Math.PI * f) ** order) * Math.cos(2 * Math.PI * f * t),
        0,
      );
    });
    const recordRate = rate / 2;
    const record = known(throughChain(prediction, motionOf({ motion, rate, samples, lead }), { seed: 3, recordRate }));
    expect(record.clippedShare + record.slewedShare + record.overRangeShare).toBe(0);
    const mean = record.motion.reduce((sum, each) => sum + each, 0) / record.motion.length;
    for (const { frequency, expected, sensed } of lines) {
      const found = toneIn(
        record.motion.map((each) => each - mean),
        frequency,
        recordRate,
      );
      // Each differentiation from the motion to what is sensed leads by a quarter turn.
      const angle = (order * Math.PI) / 2;
      const wanted = {
        re: sensed * (expected.re * Math.cos(angle) - expected.im * Math.sin(angle)),
        im: sensed * (expected.re * Math.sin(angle) + expected.im * Math.cos(angle)),
      };
      const off = Math.hypot(found.re - wanted.re, found.im - wanted.im) / (sensed * magnitudeOf(expected));
      expect(off, `${frequency} Hz`).toBeLessThan(0.003);
    }
  },
);
