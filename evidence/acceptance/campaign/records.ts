import {
  asMeasured,
  inVolts,
  measuresOf,
  occasionOf,
  recordedIn,
} from '../../../packages/core/src/acceptance/testing/as-measured.ts';
import { lowerCornerOfTransducer } from '../../../packages/core/src/chain/lower-corner.ts';
import {
  answer,
  type ChannelStatement,
  type DefectStatement,
  level,
  type MeasuredFacts,
  type MeasuredRecord,
  measuringChain,
  prediction,
  type ReadingTable,
  type RehearsalScript,
  type RehearsedMotion,
  type RehearsedRecord,
  rehearsedMotion,
  type ServingChannel,
  stated,
  type ThroughChain,
  throughChain,
  valueIfStated,
  withCalibrator,
  withTaps,
} from '../../../packages/core/src/index.ts';
import { type Random, randomFrom } from '../../../packages/core/src/uncertainty/random.ts';
import { known } from '../../reading.ts';
import { type ChainedPoint, silent } from '../../rehearsal/chains.ts';
import { speedOf } from '../healthy.ts';

/** One installed piece of a chain, somewhere within the tolerances of its design, and who records it. */
export interface Making {
  readonly place: ChainedPoint;
  readonly random: Random;
  readonly seed: number;
  /** Sensitivity over the nominal one. */
  readonly gain: number;
  /** Noise over the predicted one. */
  readonly noise: number;
  /** Direct voltage of the electronics. */
  readonly bias: number | undefined;
  /** Mounted resonance over the predicted one. */
  readonly resonance: number;
}

/** What is otherwise than healthy in one record. */
export interface Otherwise {
  readonly defects?: readonly DefectStatement[];
  readonly script?: Partial<RehearsalScript>;
  readonly statement?: Partial<ChannelStatement>;
  readonly chain?: Partial<ThroughChain>;
  readonly recording?: string;
  readonly channel?: string;
  readonly at?: string;
  readonly facts?: MeasuredFacts;
  /** Works on the volts as recorded. */
  readonly volts?: (volts: Float64Array, rate: number) => Float64Array;
}

/** A piece drawn within what the design allows. */
export function piece(place: ChainedPoint, seed: number): Making {
  const random = randomFrom(seed);
  const { prediction: designed } = place.point.appraisal!;
  const values = designed.chain.parts.transducer.sheet.values;
  const spread = valueIfStated(
    (values as { sensitivityTolerance?: Parameters<typeof valueIfStated>[0] }).sensitivityTolerance,
  ) as { low: number; high: number } | undefined;
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const window = designed.bias?.known === true ? designed.bias.value : undefined;
  return {
    place,
    random,
    seed,
    gain: 1 + between(spread?.low ?? 0, spread?.high ?? 0),
    noise: between(0.75, 1.35),
    bias: window === undefined ? undefined : between(window.low, window.high),
    resonance: between(0.85, 1.2),
  };
}

export const predictionAt = ({ point }: ChainedPoint) => point.appraisal!.prediction;
export const sensitivityAt = (place: ChainedPoint) => known(predictionAt(place).chain.sensitivity);

function chainWith(place: ChainedPoint, facts: MeasuredFacts | undefined) {
  const designed = predictionAt(place);
  return facts === undefined ? designed : prediction(measuringChain({ ...designed.chain.parts, measured: facts }));
}

/** A rehearsal of this piece. */
export function recordOf(
  { place, gain, noise, bias, seed }: Making,
  script: Partial<RehearsalScript> & { readonly seed: number },
  { defects = [], chain, script: more, facts }: Otherwise,
  done: (motion: RehearsedMotion) => RehearsedMotion = (motion) => motion,
  recordRate = 5120,
): RehearsedRecord {
  const whole = { ...silent, lead: 0.5, ...script, ...more, seed: (seed * 64 + script.seed) >>> 0 };
  const motion = known(rehearsedMotion(place.machine, place.point, whole));
  return known(
    throughChain(chainWith(place, facts), done(motion), {
      seed: whole.seed + 1,
      recordRate,
      ...(bias === undefined ? {} : { bias }),
      defects: [{ kind: 'gain', size: gain }, { kind: 'noisy-input', size: noise }, ...defects],
      ...chain,
    }),
  );
}

function told(
  record: RehearsedRecord,
  occasion: Parameters<typeof asMeasured>[1],
  { recording, channel, statement, volts, at }: Otherwise,
): MeasuredRecord {
  const heard = volts === undefined ? record : { ...record, volts: volts(record.volts, record.rate) };
  const made = asMeasured(heard, occasion, {
    ...(recording === undefined ? {} : { recording }),
    ...(channel === undefined ? {} : { channel }),
    ...(statement === undefined ? {} : { statement }),
  });
  return at === undefined ? made : { ...made, at };
}

const still: Partial<RehearsalScript> = { course: { is: 'standstill' }, healthy: 0 };

/** Direct voltage: one second, straight at the terminal. */
export function atRest(making: Making, otherwise: Otherwise = {}): MeasuredRecord {
  const direct = { ...otherwise, chain: { coupling: 'direct' as const, ...otherwise.chain } };
  const made = recordOf(making, { ...still, seconds: 1, rate: 2560, seed: 1 }, direct, undefined, 2560);
  return told(made, occasionOf('at-rest'), otherwise);
}

/** Machine stopped: eight seconds. */
export function stopped(making: Making, otherwise: Otherwise = {}): MeasuredRecord {
  const made = recordOf(making, { ...still, seconds: 8, rate: 5120, lead: 1, seed: 2 }, otherwise);
  return told(made, occasionOf('stopped'), otherwise);
}

/** The least rate at which taps show the resonance, a whole number of times 12.8 kHz. */
function rateOfTaps(place: ChainedPoint): number {
  const resonance = predictionAt(place).chain.transducer.mountedResonance;
  return 12_800 * Math.ceil((3 * (resonance?.known === true ? resonance.value : 2000)) / 12_800);
}

/** Five taps, the machine stopped. */
export function tapped(
  making: Making,
  otherwise: Otherwise = {},
  { taps = 5, push = 'with the positive direction', peak = 60, beside = undefined as string | undefined } = {},
): MeasuredRecord {
  const rate = rateOfTaps(making.place);
  const predicted = predictionAt(making.place).chain.transducer.mountedResonance;
  const facts =
    otherwise.facts ?? (predicted?.known === true ? { mountedResonance: making.resonance * predicted.value } : {});
  const strike = (motion: RehearsedMotion) => withTaps(motion, taps, level('acceleration', peak, 'peak'));
  const script = { ...still, seconds: 0.5 + 0.45 * taps, rate, lead: 0.3, seed: 3 };
  const made = recordOf(making, script, { ...otherwise, facts }, strike, rate);
  return told(made, occasionOf('taps', { push, taps, ...(beside === undefined ? {} : { at: beside }) }), otherwise);
}

/** On a calibrator whose level is true within its uncertainty. */
export function calibrated(making: Making, otherwise: Otherwise = {}): MeasuredRecord {
  const { random, place } = making;
  const [frequency, uncertainty] = [159.15, 0.03];
  const { senses } = predictionAt(place).chain.transducer;
  const stated_ = senses === 'displacement' ? level('displacement', 20e-6, 'rms') : level('acceleration', 10, 'rms');
  const given = { ...stated_, value: stated_.value * (1 + (uncertainty / 2) * random.normal()) };
  const made = recordOf(making, { ...still, seconds: 2, rate: 5120, lead: 1, seed: 4 }, otherwise, (motion) =>
    withCalibrator(motion, given, frequency),
  );
  return told(made, occasionOf('calibrator', { frequency, level: stated_, uncertainty }), otherwise);
}

/** Power comes on: the settled output with the course of this piece's corner upon it, `slower` times as slow as designed. */
export function poweredOn(making: Making, slower = 1, otherwise: Otherwise = {}): MeasuredRecord {
  const { random, place } = making;
  const corner = (known(lowerCornerOfTransducer(predictionAt(place))) * (0.8 + 0.4 * random.uniform())) / slower;
  const { settling } = predictionAt(place).chain.transducer;
  const expected = Math.max(5 / (2 * Math.PI * corner), settling?.known === true ? settling.value : 0);
  const seconds = 1 + 2.5 * slower * expected;
  const rate = 320;
  const made = recordOf(
    making,
    { ...still, seconds, rate, seed: 5 },
    { ...otherwise, chain: { coupling: 'direct' } },
    undefined,
    rate,
  );
  const on = Math.round((0.3 + 0.4 * random.uniform()) * rate);
  const height = 3 + 5 * random.uniform();
  return told(made, occasionOf('power-on'), {
    volts: (volts) =>
      volts.map((each, n) => (n < on ? 0 : each + height * Math.exp((-2 * Math.PI * corner * (n - on)) / rate))),
    ...otherwise,
  });
}

/** Shaken beside a reference: a band of noise, both with a little noise of their own. */
export function besideReference(
  making: Making,
  otherwise: Otherwise = {},
  own = 0.02,
): { readonly record: MeasuredRecord; readonly serving: ServingChannel } {
  const { random, place } = making;
  const rate = 5120;
  const { senses } = predictionAt(place).chain.transducer;
  const motion = senses === 'displacement' ? ('displacement' as const) : ('acceleration' as const);
  const size = motion === 'displacement' ? 10e-6 : 5;
  const shaken = Float64Array.from({ length: rate * 9 }, () => size * random.normal());
  const made = recordOf(making, { ...still, seconds: 8, rate, lead: 1, seed: 6 }, otherwise, (silence) => ({
    ...silence,
    samples: shaken,
  }));
  const rms = Math.sqrt(made.volts.reduce((sum, each) => sum + each * each, 0) / made.volts.length);
  const volts = made.volts.map((each) => each + own * rms * random.normal());
  const uncertainty = 0.02;
  const off = 1 + (uncertainty / 2) * random.normal();
  const reference = shaken.subarray(rate).map((each) => off * each + 0.02 * size * random.normal());
  const occasion = occasionOf('beside-reference', { reference: 'reference', uncertainty });
  return {
    record: told({ ...made, volts }, occasion, otherwise),
    serving: {
      recording: 'beside-reference.wav',
      channel: '2',
      name: 'reference',
      serves: 'reference',
      senses: motion,
      statement: inVolts({ sensitivity: answer(1) }),
      measures: measuresOf(reference, rate),
    },
  };
}

/** Speed as somebody wrote it down, within three tenths of a per cent. */
export function declared({ place, random }: Making, at?: number): number {
  return (at ?? speedOf(place.machine, place.point)) * (1 + 0.003 * (2 * random.uniform() - 1));
}

/** Running at its highest speed: sixteen seconds, a healthy machine with a little flow. */
export function run(making: Making, otherwise: Otherwise = {}, speed = declared(making)): MeasuredRecord {
  const { place, random } = making;
  const casing = predictionAt(place).chain.transducer.reference === 'casing';
  const flow = {
    name: 'flow',
    level: { quantity: 'acceleration', value: 0.02 + 0.1 * random.uniform(), detector: 'rms' },
    band: { low: 5, high: 2000 },
  } as const;
  const script = {
    course: { is: 'steady', at: 'highest' },
    healthy: 0.2 + 0.6 * random.uniform(),
    background: casing ? [flow] : [],
    seconds: 16,
    // The pump shows nothing above half this rate; the others do, and their recorder has a filter.
    rate: place.name.startsWith('P-301') ? 5120 : 10_240,
    lead: 1,
    seed: 7,
  } as const;
  return told(recordOf(making, script, otherwise), occasionOf('running', { speed }), otherwise);
}

/** Both probes of a pair while the shaft goes round: an ellipse with the rotation, of an axis ratio. */
export function pairRunning(
  making: Making,
  { ratio = 0.3 + 0.6 * making.random.uniform(), size = 3e-6 + 8e-6 * making.random.uniform() } = {},
  otherwise: { readonly x?: Otherwise; readonly y?: Otherwise } = {},
): readonly [MeasuredRecord, MeasuredRecord] {
  const { random, place } = making;
  const phase = 2 * Math.PI * random.uniform();
  const speed = declared(making);
  const shaft = place.machine.frequencies.reference;
  const record = (channel: 'X' | 'Y', by: number, share: number, more: Otherwise) => {
    const faults = [
      { kind: 'unbalance', at: shaft, phase: phase + by, size: level('displacement', share * size, 'peak') },
    ];
    const script = {
      course: { is: 'steady', at: 'highest' },
      faults,
      healthy: 0,
      seconds: 8,
      rate: 5120,
      lead: 1,
    } as const;
    // Clockwise from the top, X at 45° to the right, Y at 45° to the left: Y sees the shaft a quarter turn before X.
    const made = recordOf(
      making,
      { ...script, seed: channel === 'X' ? 8 : 9 },
      { ...more, chain: { coupling: 'direct' } },
    );
    return told(made, occasionOf('running', { speed }), { channel, ...more });
  };
  return [record('X', 0, 1, otherwise.x ?? {}), record('Y', Math.PI / 2, ratio, otherwise.y ?? {})];
}

/** A shaft that only turns, slowly: a run-out of a size, peak-to-peak in metres. */
export function rolled(making: Making, size: number, otherwise: Otherwise = {}): MeasuredRecord {
  const { random, place } = making;
  const rate = 2560;
  const speed = 500 / 60;
  const phase = 2 * Math.PI * random.uniform();
  const made = recordOf(
    making,
    { ...still, seconds: 12, rate, seed: 10 },
    { ...otherwise, chain: { coupling: 'direct' } },
    undefined,
    rate,
  );
  const volts = (size / 2) * sensitivityAt(place) * making.gain;
  return told(made, occasionOf('slow-roll', { speed: declared(making, speed) }), {
    channel: 'X',
    volts: (each) => each.map((x, n) => x + volts * Math.sin((2 * Math.PI * speed * n) / rate + phase)),
    ...otherwise,
  });
}

/** The curve of a probe on its steel: a slope over the designed one, read to 10 mV and 5 µm. */
export function curve({ place, random }: Making, slope = 1, count = 10, bend = 0): ReadingTable {
  const sensitivity = sensitivityAt(place);
  const offset = 0.1 * (random.uniform() - 0.5);
  const rows = Array.from({ length: count }, (_, k) => {
    const gap = 0.3e-3 + (k * 1.8e-3) / (count - 1);
    const read = gap + 2.5e-6 * random.normal();
    const turn = bend * ((gap - 1.2e-3) / 0.9e-3) ** 2;
    const volts = -(slope * sensitivity * (gap + turn) + offset) + 0.005 * random.normal();
    return { of: 'row', values: { gap: stated(read), voltage: stated(Math.round(volts * 100) / 100) } };
  });
  return { kind: 'probe-curve', name: 'curve', point: place.name, rows } as unknown as ReadingTable;
}

/** A loop fed step by step. `shown` tells the share of the range that is displayed for the share that was fed. */
export function steps(
  { place, random }: Making,
  {
    shown = (share: number) => share,
    counted = (share: number) => share,
    fault = true,
    detector = undefined as string | undefined,
  } = {},
): ReadingTable {
  const { chain } = predictionAt(place);
  const full = known(chain.transducer.oneNumber!.range);
  const card = chain.input.loopCard!;
  const [low, high] = [known(card.countsAtLow), known(card.countsAtHigh)];
  const rows = [4, 8, 12, 16, 20, 3.5, 21.5].map((milliamperes) => {
    // Source and card are each true to a tenth of a per cent.
    const share = (milliamperes - 4) / 16 + 0.001 * (random.uniform() - 0.5);
    const failure = milliamperes < 3.6 || milliamperes > 21;
    return {
      of: 'row',
      values: {
        current: stated(milliamperes / 1000),
        ...(failure
          ? { fault: stated(fault) }
          : {
              counts: stated(Math.max(0, Math.round(low + counted(share) * (high - low)))),
              display: stated(level(full.quantity, shown(share) * full.value, (detector ?? full.detector) as 'rms')),
            }),
      },
    };
  });
  return { kind: 'loop-steps', name: 'loop', point: place.name, rows } as unknown as ReadingTable;
}

/** A loop while its machine runs: the current itself. */
export function loopRunning(
  making: Making,
  otherwise: Otherwise = {},
  band = { low: 20, high: 400 },
  rms?: number,
): MeasuredRecord {
  const { random, place } = making;
  const full = known(predictionAt(place).chain.transducer.oneNumber!.range);
  const share = rms ?? 0.05 + 0.6 * random.uniform();
  const made = recordOf(
    making,
    {
      course: { is: 'steady', at: 'highest' },
      healthy: 0.5,
      seconds: 8,
      rate: 5120,
      lead: 2,
      seed: 11,
      background: [{ name: 'motion', level: { ...full, value: full.value * share } as never, band }],
    },
    otherwise,
    undefined,
    1280,
  );
  const occasion = occasionOf('running', { speed: declared(making) });
  return {
    ...asMeasured(made, occasion),
    statement: inVolts({ unit: answer(recordedIn('A', 'current')) }),
    measures: measuresOf(made.loop!.amperes, made.rate),
  };
}
