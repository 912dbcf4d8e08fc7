import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measured } from './gathering.ts';
import { blocksOf, evenNoise } from './made-record.ts';
import { angleSampler, orderSpectrum } from './order-spectrum.ts';
import { amplitudesOf } from './power-density.ts';
import { type PulseSettings, pulseThreshold, speedOverTime, type Turns, turnPulses } from './turns.ts';

const rate = 10_000;
const settings: PulseSettings = { rate, threshold: -5, hysteresis: 2, edge: 'falling' };

/** The angle in turns of a shaft that runs up evenly from `from` to `to` hertz in `seconds`. */
const runUp = (from: number, to: number, seconds: number) => (t: number) =>
  from * t + ((to - from) * t * t) / 2 / seconds;

/** A notch that falls over a hundredth of a turn at each whole turn and comes back over another. */
function notches(
  angle: (t: number) => number,
  length: number,
  skip: (turn: number) => boolean = () => false,
): Float64Array {
  return Float64Array.from({ length }, (_, n) => {
    const turns = angle(n / rate);
    const nearest = Math.round(turns);
    const off = Math.abs(turns - nearest);
    return off < 0.01 && !skip(nearest) ? -10 + 1000 * off : 0;
  });
}

function known(samples: Float64Array, given = settings): Turns {
  const found = measured(turnPulses(given), samples);
  if (!found.known) throw new Error('expected to be known');
  return found.value;
}

test('law: the turns of a run-up begin where the edge crosses the threshold, within a hundredth of a sample', () => {
  const angle = runUp(5, 45, 10);
  const found = known(notches(angle, 100_000));
  expect(found.times).toHaveLength(250);
  expect(found.missing).toEqual([]);
  expect(found.extra).toEqual([]);
  for (const [k, time] of found.times.entries()) {
    // The fall from 0 to −10 crosses −5 half way: 0.005 of a turn before the notch; the step to it takes one sample.
    expect(Math.abs(angle(time) - (k + 1)), `turn ${k}`).toBeLessThan(0.011);
  }
  const { times, speeds } = speedOverTime(found);
  for (const [k, speed] of speeds.entries()) expect(Math.abs(speed - (5 + 4 * times[k]!))).toBeLessThan(0.5);
});

test('law: a sine crosses where it crosses, by the line between two samples', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      (f, phase) => {
        const record = Float64Array.from({ length: 20_000 }, (_, n) => Math.sin((2 * Math.PI * f * n) / rate + phase));
        const found = known(record, { rate, threshold: 0, hysteresis: 0.4, edge: 'rising' });
        for (const time of found.times) {
          const turns = f * time + phase / (2 * Math.PI);
          expect(Math.abs(turns - Math.round(turns))).toBeLessThan(1e-5);
        }
        expect(found.meanSpeed).toBeCloseTo(f, 3);
      },
    ),
    { numRuns: 30 },
  );
});

test('law: missing pulses are named and put in, extra ones named and left out', () => {
  const angle = runUp(20, 20, 10);
  const record = notches(angle, 50_000, (turn) => turn === 20 || turn === 21 || turn === 50);
  // A scratch between two turns.
  for (let n = 0; n < 20; n++) record[15_250 + n] = -9;
  const found = known(record);
  expect(found.missing.map(({ pulses }) => pulses)).toEqual([2, 1]);
  expect(found.missing[0]!.after).toBeCloseTo(0.95, 2);
  expect(found.extra).toHaveLength(1);
  expect(found.extra[0]).toBeCloseTo(1.525, 3);
  expect(found.times).toHaveLength(100);
  for (const speed of speedOverTime(found).speeds) expect(speed).toBeCloseTo(20, 1);
  expect(found.slowest).toBeCloseTo(20, 1);
  expect(found.fastest).toBeCloseTo(20, 1);
});

test('law: noise below the hysteresis makes no pulse, and a cut changes nothing', () => {
  const noise = evenNoise(6, 50_000);
  const clean = notches(runUp(10, 30, 5), 50_000);
  const record = clean.map((x, n) => x + 0.9 * noise[n]!);
  const found = known(record);
  expect(found.times).toHaveLength(known(clean).times.length);
  const pieces = turnPulses(settings);
  for (const block of blocksOf(record, 1, 17, 3000)) pieces.take(block);
  expect(pieces.result()).toEqual({ known: true, value: found });
  expect(pulseThreshold(-10, 0)).toEqual({ threshold: -5, hysteresis: 2 });
});

test('a record without three pulses says so', () => {
  expect(JSON.stringify(measured(turnPulses(settings), new Float64Array(100)))).toContain(
    'at least three pulses across -5',
  );
});

const turnsOf = (angle: (t: number) => number, seconds: number): Turns => {
  // Each whole turn's time, solved by halving.
  const times: number[] = [];
  for (let turn = 0; turn <= angle(seconds); turn++) {
    let [low, high] = [0, seconds];
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (angle(middle) < turn) low = middle;
      else high = middle;
    }
    times.push((low + high) / 2);
  }
  const [slowest, fastest] = [1 / (times[1]! - times[0]!), 1 / (times.at(-1)! - times.at(-2)!)];
  const found = Float64Array.from(times);
  return { settings, found, times: found, missing: [], extra: [], meanSpeed: 0, slowest, fastest };
};

test('law: orders of a run-up stand on their lines with their amplitude, while its frequencies sweep', () => {
  const angle = runUp(8, 40, 20);
  const turns = turnsOf(angle, 20);
  const record = Float64Array.from({ length: 200_000 }, (_, n) => {
    const turn = 2 * Math.PI * angle(n / rate);
    return 2 * Math.cos(turn) + 0.5 * Math.cos(7.25 * turn + 1) + 0.1 * Math.sin(30 * turn) + 3;
  });
  const given = { rate, turns, perTurn: 128, length: 2048, window: 'flat-top-hft95', overlap: 0.5 } as const;
  const found = measured(orderSpectrum(given), record);
  if (!found.known) throw new Error('expected to be known');
  const { spectrum, highestOrder } = found.value;
  const amplitudes = amplitudesOf(spectrum);
  const at = (order: number) => amplitudes[Math.round(order / spectrum.resolution)];
  expect(at(1)).toBeCloseTo(2, 3);
  expect(at(7.25)).toBeCloseTo(0.5, 3);
  expect(at(30)).toBeCloseTo(0.1, 3);
  expect(at(12)).toBeLessThan(2e-4);
  expect(highestOrder).toBeCloseTo(0.42 * 128, 1);
  const pieces = orderSpectrum(given);
  for (const block of blocksOf(record, 5000, 77, 1234)) pieces.take(block);
  const cut = pieces.result();
  expect(cut).toEqual(found);
});

test('law: what is above half the samples a turn does not fold back into the orders', () => {
  const turns = turnsOf(runUp(20, 20, 5), 5);
  const record = Float64Array.from({ length: 50_000 }, (_, n) => Math.cos((2 * Math.PI * 20 * 61 * n) / rate));
  const found = measured(
    orderSpectrum({ rate, turns, perTurn: 64, length: 1024, window: 'hann', overlap: 0.5 }),
    record,
  );
  if (!found.known) throw new Error('expected to be known');
  expect(Math.max(...amplitudesOf(found.value.spectrum))).toBeLessThan(2e-3);
  expect(found.value.highestOrder).toBeCloseTo(26.88, 2);
});

test('law: at a steady speed the samples at even angles are those of the sine', () => {
  const sampler = angleSampler(
    1000,
    Float64Array.from({ length: 40 }, (_, k) => 0.03 + k * 0.04),
    64,
  );
  const out = sampler.through(Float64Array.from({ length: 2000 }, (_, n) => Math.sin((2 * Math.PI * 200 * n) / 1000)));
  expect(out.length).toBe(39 * 64);
  for (const [k, x] of out.entries()) expect(x).toBeCloseTo(Math.sin(2 * Math.PI * 200 * (0.03 + (k * 0.04) / 64)), 3);
});

test('too few turns say how many would be needed', () => {
  const turns = turnsOf(runUp(20, 20, 1), 1);
  const given = { rate, turns, perTurn: 64, length: 4096, window: 'hann', overlap: 0.5 } as const;
  expect(JSON.stringify(measured(orderSpectrum(given), new Float64Array(10_000)))).toContain('at least 64 whole turns');
});
