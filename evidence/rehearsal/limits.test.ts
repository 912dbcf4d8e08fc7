import { expect, test } from 'vitest';
import { type Prediction, throughChain } from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { chainedPoints, motionOf } from './chains.ts';

/** What is not linear in a chain stands where the prediction says: swing, slew, noise, loop. */
const rate = 2 ** 17;
const points = chainedPoints();
const called = (of: string): Prediction => points.find((each) => each.name === of)!.point.appraisal!.prediction;
const route = called('P-301/pump-drive-end-horizontal');
const loop = called('P-301/pump-drive-end-loop');

/** A sine of the motion that rises slowly to an amplitude, then half a second of it. */
function sine(amplitude: number, frequency: number, seconds = 1) {
  const lead = rate;
  const samples = Float64Array.from({ length: lead + seconds * rate }, (_, index) => {
    const rise = Math.min(1, index / (lead / 2));
    return rise * amplitude * Math.cos((2 * Math.PI * frequency * (index - lead)) / rate);
  });
  return motionOf({ motion: 'acceleration', rate, samples, lead });
}

const peaks = (samples: Float64Array) => ({
  high: samples.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
  low: samples.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
});

test('law: with the bias at either end of its tolerance the record is clipped at the predicted swing', () => {
  const window = known(route.bias!);
  const amplitude = 20 / known(route.chain.sensitivity);
  const clipped = (bias: number) =>
    known(throughChain(route, sine(amplitude, 160), { seed: 1, recordRate: rate, coupling: 'direct', bias }));
  const top = clipped(window.high);
  // A clipped edge rings a little behind the line and the last hertz below half the rate: 0.3 % of the swing.
  expect(Math.abs((peaks(top.volts).high - known(top.direct)) / window.swing.top - 1)).toBeLessThan(0.003);
  const bottom = clipped(window.low);
  expect(Math.abs((known(bottom.direct) - peaks(bottom.volts).low) / window.swing.bottom - 1)).toBeLessThan(0.003);
  expect(top.clippedAtTop).toBeGreaterThan(top.clippedAtBottom);
});

test('law: a share below the swing is not clipped, a share above it is', () => {
  const window = known(route.bias!);
  const least = window.swing.top / known(route.chain.sensitivity);
  const share = (times: number) =>
    known(throughChain(route, sine(times * least, 160), { seed: 1, recordRate: rate, bias: window.high })).clippedShare;
  // Noise may lift the top sample of one period over it.
  expect(share(0.99)).toBeLessThan(1e-4);
  expect(share(1.01)).toBeGreaterThan(0.01);
});

test('law: the cable takes all the current from the predicted frequency I/(2πCV) on', () => {
  const drive = known(route.drive!);
  const volts = 5;
  // Twenty times the cable as designed brings the limit to where the resonance lifts nothing.
  const limit = drive.current / (2 * Math.PI * drive.capacitance * volts) / 3000;
  const slewed = (frequency: number) =>
    known(
      throughChain(route, sine(volts / known(route.chain.sensitivity), frequency), {
        seed: 1,
        recordRate: rate,
        defects: [{ kind: 'cable-slew', size: 1 / 3000 }],
      }),
    ).slewedShare;
  // Noise takes the steepest sample or two over it.
  expect(slewed(limit * 0.97)).toBeLessThan(1e-4);
  expect(slewed(limit * 1.03)).toBeGreaterThan(0.001);
});

test('law: the noise of a silent motion is the predicted density within its statistical interval', () => {
  const density = known(route.noise);
  const samples = new Float64Array(rate * 8);
  const silent = motionOf({ motion: 'acceleration', rate, samples, lead: 0 });
  const recordRate = rate / 2;
  const { motion } = known(throughChain(route, silent, { seed: 5, recordRate }));
  // Averages of the periodogram of M stretches without window: chi-square of 2M for each line, many lines together.
  const length = 4096;
  const stretches = Math.floor(motion.length / length);
  for (const line of [80, 320, 700]) {
    let power = 0;
    let expected = 0;
    for (let k = line; k < line + 8; k++) {
      const frequency = (k * recordRate) / length;
      expected += density(frequency) ** 2;
      for (let stretch = 0; stretch < stretches; stretch++) {
        let [re, im] = [0, 0];
        for (let n = 0; n < length; n++) {
          const value = motion[stretch * length + n]!;
          re += value * Math.cos((2 * Math.PI * k * n) / length);
          im += value * Math.sin((2 * Math.PI * k * n) / length);
        }
        power += (2 * (re * re + im * im)) / (length * recordRate) / stretches;
      }
    }
    // Three standard deviations of a mean of 8·M exponentials.
    expect(Math.abs(power / expected - 1)).toBeLessThan(3 / Math.sqrt(8 * stretches));
  }
});

test('law: a loop sends the rms of a sine as its response lets it through, and the card the counts of it', () => {
  const response = known(loop.response)(159.15);
  const velocity = 10e-3;
  const acceleration = velocity * Math.SQRT2 * 2 * Math.PI * 159.15;
  const record = known(throughChain(loop, sine(acceleration, 159.15, 3), { seed: 1, recordRate: 64 }));
  const shown = record.motion[record.motion.length - 1]!;
  expect(shown / (velocity * Math.hypot(response.re, response.im))).toBeCloseTo(1, 2);
  const card = loop.chain.input.loopCard!;
  const counts =
    known(card.countsAtLow) +
    ((record.loop!.amperes.at(-1)! - known(card.currentAtLow)) /
      (known(card.currentAtHigh) - known(card.currentAtLow))) *
      (known(card.countsAtHigh) - known(card.countsAtLow));
  expect(record.loop!.counts.at(-1)).toBe(Math.round(counts));
});
