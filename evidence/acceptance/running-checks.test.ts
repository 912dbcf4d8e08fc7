import { describe, expect, test } from 'vitest';
import { inVolts, measuresOf, occasionOf } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import {
  answer,
  channelMeasures,
  foldedLine,
  type MeasuredRecord,
  type ServingChannel,
  showMeasure,
} from '../../packages/core/src/index.ts';
import { added, blocksOf, evenNoise, madeTone } from '../../packages/core/src/signal/measures/made-record.ts';
import { known } from '../reading.ts';
import { type ChainedPoint, chainedPoints } from '../rehearsal/chains.ts';
import { checked, of, rehearsed, running, speedOf } from './healthy.ts';

const places = chainedPoints();
const pump = places.find((each) => each.name === 'P-301/pump-drive-end-horizontal')!;
const speed = speedOf(pump.machine, pump.point);
const sensitivity = known(pump.point.appraisal!.prediction.chain.sensitivity);
const noise = (seed: number, size: number, length: number) => evenNoise(seed, length).map((each) => each * size);

function runningOf(samples: Float64Array, rate: number, declared = speed, more = {}): MeasuredRecord {
  return {
    recording: 'running.wav',
    channel: '1',
    at: pump.name,
    occasion: occasionOf('running', { speed: declared }),
    statement: inVolts(),
    measures: measuresOf(
      samples.map((each) => each * sensitivity),
      rate,
    ),
    ...more,
  };
}

const verdicts = (results: readonly { readonly verdict: string }[]) => results.map(({ verdict }) => verdict);

/** Lines at multiples of a frequency, of these peak accelerations. */
function family(base: number, rate: number, length: number, sizes: Readonly<Record<number, number>>): Float64Array {
  return added(
    noise(3, 0.02, length),
    ...Object.entries(sizes).map(([times, size]) =>
      madeTone(length, (Number(times) * base) / rate, size, Number(times)),
    ),
  );
}

describe('declared against recorded speed', () => {
  const [rate, length] = [5120, 5120 * 16];
  const shown = { 1: 1, 2: 0.4, 3: 0.3, 4: 0.2 };

  test('the declared speed meets; another one fails and is told; too short a record cannot tell', () => {
    const spoken = (turning: number, seconds = 16) =>
      of(checked(pump, [runningOf(family(turning, rate, rate * seconds, shown), rate)]), 'recorded-speed');
    expect(verdicts(spoken(speed))).toEqual(['meets']);
    const [other] = spoken(speed * 0.87);
    expect(other!.verdict).toBe('fails');
    expect(showMeasure(other!.found)).toContain('r/min');
    expect(verdicts(spoken(speed, 1))).toEqual(['cannot tell']);
    expect(verdicts(of(checked(pump, [runningOf(noise(4, 1, length), rate)]), 'recorded-speed'))).toEqual([
      'cannot tell',
    ]);
  });

  test('the mark of each turn decides where it was recorded beside', () => {
    const marked = (turning: number): ServingChannel => ({
      recording: 'running.wav',
      channel: '2',
      name: 'mark',
      serves: 'once-per-turn',
      statement: inVolts(),
      measures: measuresOf(
        Float64Array.from({ length }, (_, n) => (((n * turning) / rate) % 1 < 0.05 ? -9 : -6)),
        rate,
      ),
    });
    const results = (turning: number) =>
      verdicts(
        of(
          checked(pump, [runningOf(family(speed, rate, length, shown), rate)], { serving: [marked(turning)] }),
          'recorded-speed',
        ),
      );
    expect(results(speed * 1.003)).toEqual(['meets']);
    expect(results(speed * 1.05)).toEqual(['fails']);
  });
});

describe('folded lines', () => {
  test('a carrier at 4 kHz recorded at 5.12 kHz appears at 1.12 kHz', () => {
    expect(foldedLine(4000, 5120)).toBe(1120);
  });

  test('a folded carrier fails, a record without it meets, one that reaches above all lines cannot tell', () => {
    const rate = 5120;
    const length = rate * 16;
    const judged = (extra: readonly Float64Array[], at = rate) =>
      verdicts(
        of(checked(pump, [runningOf(added(family(speed, at, length, { 1: 1, 2: 0.4 }), ...extra), at)]), 'aliasing'),
      );
    expect(judged([madeTone(length, 1120 / rate, 0.5)])).toEqual(['fails']);
    expect(judged([])).toEqual(['meets']);
    expect(judged([], 51_200)).toEqual(['cannot tell']);
  });
});

describe('loose mount', () => {
  const [rate, length] = [5120, 5120 * 16];
  const hammering = { 0.5: 0.3, 1: 1, 1.5: 0.3, 2: 0.8, 2.5: 0.2, 3: 0.6, 4: 0.5, 5: 0.4, 6: 0.4, 7: 0.3, 8: 0.2 };
  const resonance = known(pump.point.appraisal!.prediction.chain.transducer.mountedResonance!);
  const tapped = (frequency: number): MeasuredRecord => {
    const fast = 102_400;
    const samples = noise(9, 0.001, fast * 3);
    for (let tap = 0; tap < 5; tap++) {
      const start = Math.round((0.4 + 0.5 * tap) * fast);
      for (let n = 0; n < 4000; n++) {
        samples[start + n]! +=
          50 * Math.exp((-0.02 * 2 * Math.PI * frequency * n) / fast) * Math.sin((2 * Math.PI * frequency * n) / fast);
      }
    }
    return {
      ...runningOf(samples, fast),
      recording: 'taps.wav',
      occasion: occasionOf('taps', { push: 'with the positive direction' }),
    };
  };
  const judged = (sizes: Readonly<Record<number, number>>, others: readonly MeasuredRecord[] = []) =>
    verdicts(of(checked(pump, [runningOf(family(speed, rate, length, sizes), rate), ...others]), 'loose-mount'));

  test('hammering with a lowered resonance fails, with a sound one meets, without taps cannot tell', () => {
    expect(judged({ 1: 1, 2: 0.4 })).toEqual(['meets']);
    expect(judged(hammering)).toEqual(['cannot tell']);
    expect(judged(hammering, [tapped(resonance * 0.4)])).toEqual(['fails']);
    expect(judged(hammering, [tapped(resonance)])).toEqual(['meets']);
  });
});

describe('cross-talk', () => {
  const [rate, length] = [5120, 5120 * 8];
  const two = (first: Float64Array, second: Float64Array) =>
    verdicts(
      of(checked(pump, [runningOf(first, rate), runningOf(second, rate, speed, { channel: '2' })]), 'cross-talk'),
    );

  test('two signals meet, one signal twice fails, half of each cannot tell', () => {
    const [one, other] = [noise(1, 1, length), noise(2, 1, length)];
    const line = madeTone(length, speed / rate, 5);
    expect(two(added(one, line), added(other, line))).toEqual(['meets', 'meets']);
    expect(
      two(
        added(one, line),
        added(one, line).map((each) => 0.02 * each),
      ),
    ).toEqual(['fails', 'fails']);
    expect(
      two(
        one,
        added(
          one,
          other.map((each) => each / 2),
        ),
      ),
    ).toEqual(['cannot tell', 'cannot tell']);
    expect(two(one.subarray(0, 1000), other.subarray(0, 1000))).toEqual(['cannot tell', 'cannot tell']);
  });
});

describe('families of machine faults', () => {
  const [rate, length] = [5120, 5120 * 16];
  const judged = (records: readonly MeasuredRecord[]) => of(checked(pump, records), 'machine-faults');
  /** Peak acceleration of a velocity in mm/s rms. */
  const ofVelocity = (millimetres: number, frequency: number) =>
    (millimetres / 1000) * Math.SQRT2 * 2 * Math.PI * frequency;
  const once = (millimetres: number, at = speed) =>
    runningOf(family(at, rate, length, { 1: ofVelocity(millimetres, at) }), rate, at);

  test('unbalance: small it is none, large it cannot tell at one speed, and is named where it grows as its force', () => {
    expect(verdicts(judged([once(1)]))).toEqual(['meets']);
    expect(verdicts(judged([once(12)]))).toEqual(['cannot tell']);
    const slower = { ...once(12 * 0.7 ** 3, speed * 0.7), recording: 'slower.wav' };
    const named = judged([once(12), slower]).filter(({ verdict }) => verdict === 'fails');
    expect(named.map(({ of: family }) => family)).toEqual(['unbalance']);
    const resonant = { ...once(11, speed * 0.7), recording: 'slower.wav' };
    expect(judged([once(12), resonant]).some(({ verdict }) => verdict === 'fails')).toBe(false);
  });

  test('misalignment and looseness are named by their multiples, above the limit only', () => {
    const sizes = (by: number) => ({
      1: ofVelocity(4 * by, speed),
      2: ofVelocity(8 * by, 2 * speed),
      3: ofVelocity(2 * by, 3 * speed),
    });
    expect(judged([runningOf(family(speed, rate, length, sizes(1.2)), rate)])[0]!.of).toBe(
      'misalignment across a coupling',
    );
    expect(verdicts(judged([runningOf(family(speed, rate, length, sizes(0.1)), rate)]))).toEqual(['meets']);
    const loose = Object.fromEntries(
      [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 7].map((times) => [times, ofVelocity(4, times * speed)]),
    );
    expect(judged([runningOf(family(speed, rate, length, loose), rate)]).map(({ of: family }) => family)).toContain(
      'looseness of the machine or of a bearing in its seat',
    );
  });

  test('too short a record cannot tell', () => {
    expect(verdicts(judged([runningOf(family(speed, rate, 5120, { 1: 1 }), rate)]))).toEqual(['cannot tell']);
  });

  test.each(['outer-ring', 'inner-ring'] as const)(
    'a rehearsed defect: %s is named by its harmonics in the envelope',
    (kind) => {
      const bearing = pump.machine.stated.train.elements.find((each) => each.name === 'pump-drive-end')!.name;
      const record = rehearsed(
        pump as ChainedPoint,
        {
          seed: 5,
          rate: 51_200,
          seconds: 10,
          healthy: 0.3,
          course: { is: 'steady', at: 'highest' },
          faults: [{ kind, at: bearing, size: { quantity: 'acceleration', value: 20, detector: 'peak' } }],
        },
        { recordRate: 25_600 },
      );
      const named = judged([running(speed, record)]).filter(({ verdict }) => verdict === 'fails');
      expect(named.map(({ of: family }) => family)).toEqual([
        `a defect of the ${kind.replace('-', ' ')} of pump-drive-end`,
      ]);
      expect(named[0]!.causes.length).toBeGreaterThan(1);
    },
  );
});

describe('clipping', () => {
  const [rate, length] = [5120, 5120 * 8];
  const { prediction } = pump.point.appraisal!;
  const ceiling = Math.min(
    ...prediction.ceilings.flatMap((each) =>
      each.known && each.value.motion === 'acceleration' ? [each.value.peak] : [],
    ),
  );
  const sine = (share: number) => madeTone(length, 31.7 / rate, share * ceiling);
  const judged = (samples: Float64Array) => verdicts(of(checked(pump, [runningOf(samples, rate)]), 'clipping'));

  test('below the ceiling it meets, a whole sine near it cannot tell, flat and crowded tops fail', () => {
    expect(judged(sine(0.5))).toEqual(['meets']);
    expect(judged(sine(0.95))).toEqual(['cannot tell']);
    const cut = sine(1.5).map((each) => Math.max(-ceiling, Math.min(ceiling, each)));
    expect(judged(cut)).toEqual(['fails']);
    // Behind noise no two samples are equal any more.
    expect(judged(added(cut, noise(6, ceiling / 500, length)))).toEqual(['fails']);
  });
});

describe('measures in one pass', () => {
  test('law: how a record is cut into blocks changes none of its measures', () => {
    const samples = added(noise(5, 1, 60_000), madeTone(60_000, 0.01, 3));
    samples[40_000] = 80;
    const settings = { rate: answer(5120), samples: samples.length };
    const whole = channelMeasures(settings);
    whole.take(samples);
    for (const lengths of [[1, 7, 1000], [4096], [33, 20_000]]) {
      const cut = channelMeasures(settings);
      for (const block of blocksOf(samples, ...lengths)) cut.take(block);
      expect(cut.result()).toEqual(whole.result());
    }
  });
});
