import { describe, expect, test } from 'vitest';
import { asMeasured, inVolts, measuresOf, occasionOf } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import { answer, type MeasuredRecord, type Occasion, unanswered } from '../../packages/core/src/index.ts';
import { added, evenNoise, madeTone } from '../../packages/core/src/signal/measures/made-record.ts';
import { known } from '../reading.ts';
import { type ChainedPoint, chainedPoints } from '../rehearsal/chains.ts';
import { checked, of, rehearsed } from './healthy.ts';

const pump = chainedPoints().find((each) => each.name === 'P-301/pump-drive-end-horizontal')! as ChainedPoint;
const { prediction } = pump.point.appraisal!;
const sensitivity = known(prediction.chain.sensitivity);
const rate = 12_800;
const verdicts = (results: readonly { readonly verdict: string }[]) => results.map(({ verdict }) => verdict);

function recordOf(
  occasion: Occasion,
  volts: Float64Array,
  coupling: 'direct' | 'alternating',
  more = {},
): MeasuredRecord {
  return {
    recording: `${occasion.kind}.wav`,
    channel: '1',
    at: pump.name,
    occasion,
    statement: inVolts({ coupling: answer(coupling) }),
    measures: measuresOf(volts, rate),
    ...more,
  };
}

const still = rehearsed(pump, { seed: 31, healthy: 0, course: { is: 'standstill' } });

describe('bias', () => {
  const judged = (volts: number, coupling: 'direct' | 'alternating' = 'direct') => {
    const samples = evenNoise(3, rate * 2).map((each) => volts + each / 1000);
    return of(checked(pump, [recordOf(occasionOf('at-rest'), samples, coupling)]), 'bias');
  };
  test('inside its range it meets, outside it fails with the causes of that voltage, AC-coupled it cannot tell', () => {
    expect(verdicts(judged(12))).toEqual(['meets']);
    const causes = (volts: number) => judged(volts)[0]!.causes.map(({ cause }) => String(cause));
    expect(verdicts(judged(0.1))).toEqual(['fails']);
    expect(causes(0.1)[0]).toContain('short');
    expect(causes(4)[0]).toContain('leakage');
    expect(causes(-12)[0]).toContain('exchanged');
    expect(verdicts(judged(0, 'alternating'))).toEqual(['cannot tell']);
  });
});

describe('with the machine stopped', () => {
  const floor = (volts: Float64Array) =>
    verdicts(of(checked(pump, [recordOf(occasionOf('stopped'), volts, 'alternating')]), 'noise-floor'));
  const times = (by: number) => still.volts.map((each) => by * each);

  test('the floor meets as predicted, fails four times as high or ten times as low, and cannot tell of a short record', () => {
    expect(floor(times(1))).toEqual(['meets']);
    expect(floor(times(4))).toEqual(['fails']);
    expect(floor(times(0.1))).toEqual(['fails']);
    expect(floor(times(0.4))).toEqual(['cannot tell']);
    expect(floor(still.volts.subarray(0, 30))).toEqual(['cannot tell']);
  });

  test('hum below the target meets, as large as the target fails, and of a second it cannot tell', () => {
    const hum = (peak: number, seconds = 8) => {
      const length = Math.round(seconds * rate);
      const samples = added(still.volts.subarray(0, length), madeTone(length, 50 / rate, peak * sensitivity));
      return verdicts(of(checked(pump, [recordOf(occasionOf('stopped'), samples, 'alternating')]), 'mains-hum'));
    };
    expect(hum(1e-6)).toEqual(['meets']);
    expect(hum(20)).toEqual(['fails']);
    expect(hum(1e-6, 1)).toEqual(['cannot tell']);
  });

  test('a steep low end fails, the predicted one meets', () => {
    const slope = (size: number) => {
      let walk = 0;
      const steps = evenNoise(17, still.volts.length);
      // A walk that is pulled back: flat below half a hertz, steep above.
      const samples = still.volts.map((each, n) => {
        walk = walk * (1 - (2 * Math.PI * 0.5) / rate) + steps[n]! * size;
        return each + walk;
      });
      return verdicts(of(checked(pump, [recordOf(occasionOf('stopped'), samples, 'alternating')]), 'ski-slope'));
    };
    expect(slope(0)).toEqual(['meets']);
    expect(slope(2e-5)).toEqual(['fails']);
    const short = recordOf(occasionOf('stopped'), still.volts.subarray(0, 600), 'alternating');
    expect(verdicts(of(checked(pump, [short]), 'ski-slope'))).toEqual(['cannot tell']);
  });
});

describe('taps', () => {
  const fast = 102_400;
  const resonance = known(prediction.chain.transducer.mountedResonance!);
  const struck = (frequency: number, size: number, count = 5, sampled = fast) => {
    const samples = evenNoise(23, sampled * 3).map((each) => each * 1e-5);
    for (let tap = 0; tap < count; tap++) {
      const start = Math.round((0.4 + 0.5 * tap) * sampled);
      for (let n = 0; n < sampled / 25; n++) {
        const angle = (2 * Math.PI * frequency * n) / sampled;
        samples[start + n]! += size * Math.exp(-0.02 * angle) * Math.sin(angle);
      }
    }
    return samples;
  };
  const tapped = (volts: Float64Array, more = {}, sampled = fast) =>
    recordOf(occasionOf('taps', { push: 'with the positive direction' }), volts, 'alternating', {
      measures: measuresOf(volts, sampled),
      ...more,
    });

  test('the predicted resonance meets, a third of it fails, and too low a rate cannot tell', () => {
    const judged = (frequency: number, sampled = fast) =>
      verdicts(of(checked(pump, [tapped(struck(frequency, 0.5, 5, sampled), {}, sampled)]), 'resonance'));
    expect(judged(resonance)).toEqual(['meets']);
    expect(judged(resonance / 3)).toEqual(['fails']);
    expect(judged(resonance / 8, 6400)).toEqual(['cannot tell']);
  });

  test('polarity meets, is reversed, or cannot be told of two taps', () => {
    const judged = (size: number, count = 5) =>
      verdicts(of(checked(pump, [tapped(struck(resonance / 3, size, count))]), 'tap-polarity'));
    expect(judged(0.5)).toEqual(['meets']);
    expect(judged(-0.5)).toEqual(['fails']);
    expect(judged(0.5, 2)).toEqual(['cannot tell']);
  });

  test('the channel that reacts most is the right one', () => {
    const other = pump.machine.points.find(({ point }) => point.of !== pump.name)!.point.of;
    const judged = (own: number, beside: number) =>
      verdicts(
        of(
          checked(pump, [
            tapped(struck(resonance / 3, own)),
            tapped(struck(resonance / 3, beside), {
              at: other,
              channel: '2',
              occasion: occasionOf('taps', { at: pump.name }),
            }),
          ]),
          'tap-place',
        ).filter(({ at }) => at === pump.name),
      );
    expect(judged(0.5, 0.1)).toEqual(['meets']);
    expect(judged(0.1, 0.5)).toEqual(['fails']);
    expect(judged(0.5, 0.45)).toEqual(['cannot tell']);
  });
});

test('a rehearsed record straight at the terminal stands at its bias', () => {
  const record = rehearsed(
    pump,
    { seed: 3, seconds: 3, healthy: 0, course: { is: 'standstill' } },
    { coupling: 'direct' },
  );
  expect(verdicts(of(checked(pump, [asMeasured(record, occasionOf('at-rest'))]), 'bias'))).toEqual(['meets']);
});

describe('power comes on', () => {
  const response = known(prediction.response);
  const constant = (() => {
    let [low, high] = [1e-3, 1e3];
    for (let step = 0; step < 60; step++) {
      const middle = Math.sqrt(low * high);
      const { re, im } = response(middle);
      if (Math.hypot(re, im) < Math.SQRT1_2) low = middle;
      else high = middle;
    }
    return 1 / (2 * Math.PI * low);
  })();
  const stated = prediction.chain.transducer.settling;
  const expected = Math.max(5 * constant, stated?.known === true ? stated.value : 0);
  const slow = 500;
  const judged = (tau: number, seconds: number) => {
    const volts = Float64Array.from({ length: Math.round(seconds * slow) }, (_, n) => {
      const t = n / slow - 1;
      return t < 0 ? 0 : 12 + 10 * Math.exp(-t / tau);
    });
    return verdicts(
      of(
        checked(pump, [recordOf(occasionOf('power-on'), volts, 'direct', { measures: measuresOf(volts, slow) })]),
        'settling',
      ),
    );
  };

  test('five time constants meet, an endless drift fails, a record that ends before cannot tell', () => {
    expect(judged(expected / 6, 1 + 3 * expected)).toEqual(['meets']);
    expect(judged(expected, 1 + 4 * expected)).toEqual(['fails']);
    expect(judged(expected / 6, 1 + expected)).toEqual(['cannot tell']);
  });
});

describe('slew', () => {
  const drive = known(prediction.drive!);
  const limit = drive.current / drive.capacitance;
  const fast = 102_400;
  const period = 64;
  // A triangle of that slope, as a cable makes of a burst, and a sine as steep at its steepest.
  const triangle = (slope: number) =>
    Float64Array.from({ length: fast }, (_, n) => {
      const place = n % period;
      return ((place < period / 2 ? place : period - place) * slope) / fast;
    });
  const sine = (slope: number) => madeTone(fast, 1 / period, (slope * period) / (2 * Math.PI * fast));
  const judged = (volts: Float64Array, more = {}) => {
    const record = recordOf(occasionOf('running', { speed: 24.75 }), volts, 'alternating', {
      measures: measuresOf(volts, fast),
      ...more,
    });
    return verdicts(of(checked(pump, [record]), 'slew'));
  };

  test('slopes below what the current drives meet, at it they fail, and triangles fail wherever they lie', () => {
    expect(judged(sine(0.3 * limit))).toEqual(['meets']);
    expect(judged(sine(limit))).toEqual(['fails']);
    expect(judged(triangle(0.3 * limit))).toEqual(['fails']);
    const gain = unanswered([{ of: 'the record', what: 'gain' }]);
    expect(judged(sine(limit), { statement: inVolts({ gain }) })).toEqual(['cannot tell']);
  });
});
