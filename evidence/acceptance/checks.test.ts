import { describe, expect, test } from 'vitest';
import { inVolts, measuresOf, occasionOf, recordedIn } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import {
  answer,
  type ChannelStatement,
  humanErrors,
  level,
  type MeasuredRecord,
  type Occasion,
  type ReadingTable,
  type ServingChannel,
  showMeasure,
  stated,
} from '../../packages/core/src/index.ts';
import { added, evenNoise, madeTone } from '../../packages/core/src/signal/measures/made-record.ts';
import { known } from '../reading.ts';
import { type ChainedPoint, chainedPoints } from '../rehearsal/chains.ts';
import { checked, of, speedOf } from './healthy.ts';

const rate = 12_800;
const length = rate * 8;
const places = chainedPoints();
const placeOf = (name: string): ChainedPoint => places.find((each) => each.name === name)!;
const pump = placeOf('P-301/pump-drive-end-horizontal');
const pair = placeOf('K-11/bearing-1');
const sensitivityOf = (place: ChainedPoint) => known(place.point.appraisal!.prediction.chain.sensitivity);
const scaled = (record: Float64Array, by: number) => record.map((each) => each * by);
const noise = (seed: number, size: number, count = length) => scaled(evenNoise(seed, count), size);

function recordOf(
  place: ChainedPoint,
  occasion: Occasion,
  samples: Float64Array,
  more: { recording?: string; channel?: string; statement?: Partial<ChannelStatement>; rate?: number } = {},
): MeasuredRecord {
  return {
    recording: more.recording ?? `${occasion.kind}.wav`,
    channel: more.channel ?? '1',
    at: place.name,
    occasion,
    statement: inVolts(more.statement ?? {}),
    measures: measuresOf(samples, more.rate ?? rate),
  };
}

const verdicts = (results: readonly { readonly of?: string; readonly verdict: string }[]) =>
  results.map((each) => (each.of === undefined ? each.verdict : `${each.of}: ${each.verdict}`));

describe('sensitivity', () => {
  const occasion = occasionOf('calibrator', {
    frequency: 159.15,
    level: level('acceleration', 10, 'rms'),
    uncertainty: 0.03,
  });
  const onCalibrator = (factor: number, statement: Partial<ChannelStatement> = {}) => {
    const volts = 10 * Math.SQRT2 * sensitivityOf(pump) * factor;
    const record = added(madeTone(length, 159.15 / rate, volts), noise(3, volts / 100));
    return of(checked(pump, [recordOf(pump, occasion, record, { statement })]), 'sensitivity');
  };

  test('a known level read as what it is meets', () => {
    expect(verdicts(onCalibrator(1.02))).toEqual(['meets']);
  });

  test('law: every human ratio fails, and is named among its candidates', () => {
    for (const { ratio, written, mistake } of humanErrors) {
      const [found] = onCalibrator(ratio);
      expect(found!.verdict, written).toBe('fails');
      expect(found!.causes.map(({ cause }) => cause)).toContain(mistake);
    }
  });

  test('a record without the line of the calibrator cannot tell', () => {
    const record = noise(4, 0.001);
    expect(verdicts(of(checked(pump, [recordOf(pump, occasion, record)]), 'sensitivity'))).toEqual(['cannot tell']);
  });

  test('the recorder told g for m/s² is recognised by its label alone', () => {
    const told = (times: number) => ({
      unit: answer(recordedIn('m/s2', 'acceleration')),
      sensitivity: answer(sensitivityOf(pump) * times),
    });
    const label = (times: number) =>
      of(
        checked(pump, [recordOf(pump, occasionOf('stopped'), noise(5, 1), { statement: told(times) })]),
        'recorder-sensitivity',
      );
    expect(verdicts(label(1.03))).toEqual(['meets']);
    expect(label(9.80665)[0]!.causes.map(({ cause }) => cause)).toContain('g read where m/s² was meant');
  });
});

describe('beside a reference', () => {
  const occasion = occasionOf('beside-reference', { reference: 'ref', uncertainty: 0.02 });
  const motion = added(noise(7, 3), madeTone(length, 80 / rate, 5));
  const reference = (samples: Float64Array): ServingChannel => ({
    recording: 'beside-reference.wav',
    channel: '2',
    name: 'ref',
    serves: 'reference',
    statement: inVolts({ unit: answer(recordedIn('m/s2', 'acceleration')) }),
    measures: measuresOf(samples, rate),
  });
  const beside = (own: Float64Array, ref: Float64Array = motion) =>
    checked(pump, [recordOf(pump, occasion, scaled(own, sensitivityOf(pump)))], { serving: [reference(ref)] });
  const later = (samples: Float64Array, by: number) => samples.map((_, n) => samples[Math.max(0, n - by)]!);

  test('the same motion meets in size and phase', () => {
    const results = beside(motion);
    expect(verdicts(of(results, 'sensitivity'))).toEqual(['meets']);
    expect(verdicts(of(results, 'reference-phase')).every((each) => each.endsWith('meets'))).toBe(true);
  });

  test('reversed, it fails by polarity', () => {
    const results = of(beside(scaled(motion, -1)), 'reference-phase');
    const phase = results.find((each) => each.of === undefined)!;
    expect(phase.verdict).toBe('fails');
    expect(String(phase.causes[0]!.cause)).toContain('polarity');
  });

  test('ten times as large, it fails by a factor', () => {
    const [found] = of(beside(scaled(motion, 10)), 'sensitivity');
    expect(found!.verdict).toBe('fails');
    expect(found!.causes.map(({ cause }) => cause)).toContain('a gain or sensitivity ten times off');
  });

  test('four samples late, it fails by its delay and does not speak of one phase', () => {
    expect(verdicts(of(beside(later(motion, 4)), 'reference-phase'))).toEqual(['delay: fails', 'cannot tell']);
  });

  test('without anything in common it cannot tell', () => {
    const results = beside(noise(8, 3), noise(9, 3));
    expect(verdicts([...of(results, 'sensitivity'), ...of(results, 'reference-phase')])).toEqual([
      'cannot tell',
      'cannot tell',
    ]);
  });
});

describe('probes', () => {
  const direct = { coupling: answer('direct' as const) };
  const standing = (volts: number) => scaled(noise(11, 0.01), 1).map((each) => each + volts);

  test('a gap as set meets; one at the rail and one set otherwise fail; an AC-coupled one cannot tell', () => {
    const gap = (volts: number, statement: Partial<ChannelStatement> = direct) =>
      verdicts(
        of(checked(pair, [recordOf(pair, occasionOf('at-rest'), standing(volts), { channel: 'X', statement })]), 'gap'),
      );
    expect(gap(-10)).toEqual(['range: meets', 'setting: meets']);
    expect(gap(-0.8)).toEqual(['range: fails', 'setting: fails']);
    expect(gap(-8)).toEqual(['range: meets', 'setting: fails']);
    expect(gap(-10, {})).toEqual(['cannot tell']);
  });

  test('a shaft that goes farther than its clearance fails', () => {
    const rest = recordOf(pair, occasionOf('at-rest'), standing(-10), { channel: 'X', statement: direct });
    const shift = (metres: number) => {
      const volts = -10 + metres * sensitivityOf(pair);
      const run = recordOf(pair, occasionOf('running', { speed: 190 }), standing(volts), {
        channel: 'X',
        statement: direct,
      });
      return of(checked(pair, [rest, run]), 'gap').find((each) => each.of === 'shift since rest')!.verdict;
    };
    expect(shift(100e-6)).toBe('meets');
    expect(shift(400e-6)).toBe('fails');
  });

  test('run-out within the allowance meets, above it fails, and at too high a speed cannot tell', () => {
    const speed = 500 / 60;
    const rolled = (micrometres: number, at = speed) => {
      const volts = (micrometres * 1e-6 * sensitivityOf(pair)) / 2;
      const samples = added(madeTone(length, at / rate, volts), noise(12, 0.002));
      return verdicts(
        of(
          checked(pair, [recordOf(pair, occasionOf('slow-roll', { speed: at }), samples, { channel: 'X' })]),
          'run-out',
        ),
      );
    };
    expect(rolled(4)).toEqual(['meets']);
    expect(rolled(12)).toEqual(['fails']);
    expect(rolled(4, 60)).toEqual(['cannot tell']);
  });

  test('a forward orbit meets, exchanged channels fail, one probe alone cannot tell', () => {
    const speed = speedOf(pair.machine, pair.point);
    const size = 20e-6 * sensitivityOf(pair);
    // Clockwise from the top, X at 45° to the right, Y at 45° to the left: Y sees the shaft a quarter turn before X.
    const at = (phase: number, seed: number) =>
      added(madeTone(length, speed / rate, size, phase), noise(seed, size / 50));
    const orbit = (records: readonly (readonly [string, number])[]) =>
      verdicts(
        of(
          checked(
            pair,
            records.map(([channel, phase], index) =>
              recordOf(pair, occasionOf('running', { speed }), at(phase, 20 + index), { channel }),
            ),
          ),
          'orbit-direction',
        ),
      );
    expect(
      orbit([
        ['X', 0],
        ['Y', Math.PI / 2],
      ]),
    ).toEqual(['meets']);
    expect(
      orbit([
        ['Y', 0],
        ['X', Math.PI / 2],
      ]),
    ).toEqual(['fails']);
    expect(
      orbit([
        ['X', 0],
        ['Y', 0.001],
      ]),
    ).toEqual(['cannot tell']);
    expect(orbit([['X', 0]])).toEqual(['cannot tell']);
  });

  test('a curve of the designed slope meets, one of another steel fails, five points cannot tell', () => {
    const curve = (slope: number, steps: number) => {
      const rows = Array.from({ length: steps }, (_, k) => {
        const gap = 0.3e-3 + (k * 1.8e-3) / (steps - 1);
        return { of: 'row', values: { gap: stated(gap), voltage: stated(-slope * sensitivityOf(pair) * gap) } };
      });
      const table = { kind: 'probe-curve', name: 'curve', point: pair.name, rows } as unknown as ReadingTable;
      return verdicts(of(checked(pair, [], { readings: [table] }), 'probe-curve'));
    };
    expect(curve(1.02, 10)).toEqual(['slope: meets', 'straightness: meets']);
    expect(curve(1.12, 10)).toEqual(['slope: fails', 'straightness: fails']);
    expect(curve(1, 5)).toEqual(['cannot tell']);
  });
});

describe('loops', () => {
  const loop = places.find(({ point }) => point.appraisal!.prediction.chain.transducer.oneNumber !== undefined)!;
  const full = known(loop.point.appraisal!.prediction.chain.transducer.oneNumber!.range);
  const card = loop.point.appraisal!.prediction.chain.input.loopCard!;
  const [low, high] = [known(card.countsAtLow), known(card.countsAtHigh)];
  const steps = (shown: (share: number) => number, fault: boolean | undefined, currents = [4, 8, 12, 16, 20]) => {
    const rows = [...currents, 3.5, 21.5].map((milliamperes) => {
      const share = (milliamperes - 4) / 16;
      const failure = milliamperes < 3.6 || milliamperes > 21;
      return {
        of: 'row',
        values: {
          current: stated(milliamperes / 1000),
          ...(failure
            ? fault === undefined
              ? {}
              : { fault: stated(fault) }
            : {
                counts: stated(Math.round(low + share * (high - low))),
                display: stated(level(full.quantity, shown(share) * full.value, full.detector)),
              }),
        },
      };
    });
    const table = { kind: 'loop-steps', name: 'loop', point: loop.name, rows } as unknown as ReadingTable;
    return of(checked(loop, [], { readings: [table] }), 'loop-scale');
  };

  test('five steps and both failures as designed meet', () => {
    expect(verdicts(steps((share) => share, true))).toEqual([
      'counts: meets',
      'display: meets',
      'low failure current: meets',
      'high failure current: meets',
    ]);
  });

  test('a scale for twice the range fails and is recognised; a dead sensor that reads zero fails', () => {
    const results = steps((share) => 2 * share, false);
    expect(verdicts(results)).toEqual([
      'counts: meets',
      'display: fails',
      'low failure current: fails',
      'high failure current: fails',
    ]);
    expect(results[1]!.causes[0]!.evidence).toBeDefined();
    expect(showMeasure(results[1]!.causes[0]!.evidence)).toContain('2');
  });

  test('without live zero it is told so; half the steps cannot tell', () => {
    const [, display] = steps((share) => 0.2 + 0.8 * share, undefined);
    expect(showMeasure(display!.causes[0]!.cause)).toContain('0 to 20 mA');
    expect(verdicts(steps((share) => share, undefined, [8, 12]))).toEqual([
      'counts: cannot tell',
      'display: cannot tell',
      'low failure current: cannot tell',
      'high failure current: cannot tell',
    ]);
  });

  test('a current that stops at 17 mA again and again fails; a quiet one cannot tell; one up to 20 mA meets', () => {
    const amperes = { unit: answer(recordedIn('A', 'current')) };
    const running = (ceiling: number, swing: number) => {
      const samples = madeTone(20_000, 0.3 / 100, swing, 0.3).map((each) => Math.min(ceiling, 0.012 + each));
      const record = recordOf(loop, occasionOf('running', { speed: 24 }), samples, { statement: amperes, rate: 100 });
      return verdicts(of(checked(loop, [record]), 'loop-ceiling'));
    };
    expect(running(0.017, 0.009)).toEqual(['fails']);
    expect(running(0.03, 0.002)).toEqual(['cannot tell']);
    expect(running(0.03, 0.0081)).toEqual(['meets']);
  });
});
