import { readingError } from '../../packages/core/src/acceptance/check/bias.ts';
import { asMeasured, inVolts, measuresOf, occasionOf } from '../../packages/core/src/acceptance/testing/as-measured.ts';
import { lowerCornerOfTransducer } from '../../packages/core/src/chain/lower-corner.ts';
import {
  answer,
  type DesignedPoint,
  type Identified,
  identifiedChains,
  type MeasuredFacts,
  type MeasuredRecord,
  measuringChain,
  prediction,
  type ServingChannel,
  type ThroughChain,
  throughChain,
} from '../../packages/core/src/index.ts';
import { rowTransfer, splitChain } from '../../packages/core/src/rehearsal/chain-split.ts';
import { outputLimits } from '../../packages/core/src/rehearsal/output-limits.ts';
import { SpectralFilter } from '../../packages/core/src/rehearsal/spectral.ts';
import { complex, reciprocal } from '../../packages/core/src/signal/complex.ts';
import { type Random, randomFrom } from '../../packages/core/src/uncertainty/random.ts';
import { known } from '../reading.ts';
import { type ChainedPoint, motionOf, silent } from '../rehearsal/chains.ts';
import { designOf } from './healthy.ts';

/** One property put into a chain, and what was identified of it; nothing where it was not told. */
export interface Recovered {
  readonly kind: string;
  readonly injected: number;
  readonly found: Identified | undefined;
}

const rate = 12_800;

interface Making {
  readonly place: ChainedPoint;
  readonly random: Random;
  readonly seed: number;
}

/** A motion through the chain with what was put into it, recorded at the rate of the motion. */
function through(
  { place, seed }: Making,
  samples: Float64Array,
  lead: number,
  more: Partial<ThroughChain> = {},
  measured?: MeasuredFacts,
) {
  const { chain } = place.point.appraisal!.prediction;
  const as = prediction(measuringChain({ ...chain.parts, ...(measured === undefined ? {} : { measured }) }));
  const motion = motionOf({ motion: 'acceleration', rate, samples, lead }, silent);
  const record = known(throughChain(as, { ...motion, of: place.point.point.of }, { seed, recordRate: rate, ...more }));
  return { ...record, of: place.point.point.of };
}

function told({ place }: Making, record: MeasuredRecord, serving: readonly ServingChannel[] = []) {
  return identifiedChains(designOf(place.machine), [record], { serving });
}

function designedWith({ place }: Making, measured: MeasuredFacts): DesignedPoint {
  const { appraisal } = place.point;
  const parts = { ...appraisal!.prediction.chain.parts, measured };
  return { ...place.point, appraisal: { ...appraisal!, prediction: prediction(measuringChain(parts)) } };
}

/** The same place, its design standing at a resonance that a short record shows. */
function standingAt(making: Making, measured: MeasuredFacts): Making {
  const point = designedWith(making, measured);
  const machine = { ...making.place.machine, points: [point] };
  return { ...making, place: { ...making.place, machine, point } };
}

/** Blows of half a sine, 0.1 ms to 0.2 ms long and unevenly strong and so weak that noise decides, about 0.4 s apart, between the samples. */
function tapped(random: Random, length: number): Float64Array {
  const samples = new Float64Array(length);
  for (let k = 0; k < 5; k++) {
    const at = rate * (0.5 + 0.4 * k + 0.05 * random.uniform());
    const [width, peak] = [rate * (1e-4 + 1e-4 * random.uniform()), 2 * (1 + random.uniform())];
    for (let n = Math.ceil(at); n < at + width; n++) samples[n]! += peak * Math.sin((Math.PI * (n - at)) / width);
  }
  return samples;
}

function byTaps(begun: Making): readonly Recovered[] {
  const making = standingAt(begun, { mountedResonance: 2500, quality: 25 });
  const { random } = making;
  const mountedResonance = 2200 + 600 * random.uniform();
  const quality = 15 + 20 * random.uniform();
  const record = through(making, tapped(random, 32_768), 0, {}, { mountedResonance, quality });
  const found = told(making, asMeasured(record, occasionOf('taps')));
  return [
    { kind: 'mounted-resonance', injected: mountedResonance, found: of(found, 'mounted-resonance') },
    { kind: 'quality', injected: quality, found: of(found, 'quality') },
  ];
}

function byCalibrator(making: Making): readonly Recovered[] {
  const { random } = making;
  const gain = 0.5 + 1.5 * random.uniform();
  const uncertainty = 0.03;
  // Its level is wrong within its own uncertainty, k = 2.
  const true_ = 10 * Math.SQRT2 * (1 + (uncertainty / 2) * random.normal());
  const samples = Float64Array.from({ length: 32_768 }, (_, n) => true_ * Math.sin((2 * Math.PI * 159.15 * n) / rate));
  const record = through(making, samples, 12_800, { defects: [{ kind: 'gain', size: gain }] });
  const level = { quantity: 'acceleration', value: 10, detector: 'rms' };
  const occasion = occasionOf('calibrator', { frequency: 159.15, level, uncertainty });
  return [{ kind: 'gain-ratio', injected: gain, found: of(told(making, asMeasured(record, occasion)), 'gain-ratio') }];
}

function byStandstill(making: Making): readonly Recovered[] {
  const size = 1 + 4 * making.random.uniform();
  const quiet = new Float64Array(32_768);
  const record = through(making, quiet, 12_800, { defects: [{ kind: 'noisy-input', size }], coupling: 'direct' });
  const found = told(making, asMeasured(record, occasionOf('stopped')));
  return [{ kind: 'noise-floor', injected: size, found: of(found, 'noise-floor') }];
}

/** Power comes on: the output steps and settles with the corner of this piece, its own noise upon it. */
function byPowerOn(making: Making): readonly Recovered[] {
  const { random, place } = making;
  const nominal = known(lowerCornerOfTransducer(place.point.appraisal!.prediction));
  const corner = nominal * (0.6 + 1.2 * random.uniform());
  const seconds = 1 + 6 / (2 * Math.PI * corner);
  const slow = through(making, new Float64Array(Math.ceil(seconds * rate)), 0, { coupling: 'direct' });
  const on = Math.round((0.3 + 0.4 * random.uniform()) * rate);
  const settling = 4 + 4 * random.uniform();
  const volts = slow.volts.map((each, n) =>
    n < on ? 0 : each + settling * Math.exp((-2 * Math.PI * corner * (n - on)) / rate),
  );
  const found = told(making, asMeasured({ ...slow, volts }, occasionOf('power-on')));
  return [{ kind: 'low-corner', injected: corner, found: of(found, 'low-corner') }];
}

/** Shaken far beyond the swing, its bias somewhere within its tolerance. */
function byOverload(making: Making): readonly Recovered[] {
  const { random, place } = making;
  const { prediction: predicted } = place.point.appraisal!;
  const window = known(predicted.bias!);
  const bias = window.low + (window.high - window.low) * random.uniform();
  const peak = (3 * (window.swing.top + window.swing.bottom)) / known(predicted.chain.sensitivity);
  const frequency = 40 + 20 * random.uniform();
  const samples = Float64Array.from(
    { length: 25_600 },
    (_, n) => peak * Math.sin((2 * Math.PI * frequency * n) / rate),
  );
  const record = through(making, samples, 6400, { coupling: 'direct', bias });
  const limits = known(outputLimits(predicted, bias))!;
  const line = rowTransfer(splitChain(predicted.chain, known(predicted.chain.stages), true).toRecord)(1);
  const passed = Math.hypot(line.re, line.im);
  // The recorder reads a direct voltage no truer than it is said to, k = 2.
  const [off, zero] = [(readingError.share / 2) * random.normal(), (readingError.zero / 2) * random.normal()];
  const read = { ...record, volts: record.volts.map((each) => (1 + off) * each + zero) };
  const found = told(making, asMeasured(read, occasionOf('running', { speed: 25 })));
  const rest = known(record.direct);
  return [
    {
      kind: 'clip-levels, upper rail',
      injected: rest + passed * limits.top,
      found: of(found, 'clip-levels', 'upper rail'),
    },
    {
      kind: 'clip-levels, lower rail',
      injected: rest - passed * limits.bottom,
      found: of(found, 'clip-levels', 'lower rail'),
    },
  ];
}

/** Shaken by noise beside a reference that has a little noise of its own; held back, or behind a low-pass. */
function besideReference(making: Making): readonly Recovered[] {
  const { random } = making;
  const samples = Float64Array.from({ length: 40_960 }, () => 20 * random.normal());
  const lead = 8192;
  const size = 0.002 * random.uniform();
  const late = through(making, samples, lead, { defects: [{ kind: 'delay', size }] });
  const corner = 1500 + 2000 * random.uniform();
  const straight = through(making, samples, lead);
  // A first-order low-pass put upon the lines of the record, so that its corner stands where it is said.
  const low = new SpectralFilter(straight.volts.length, rate).through(
    straight.volts,
    (frequency) => reciprocal(complex(1, frequency / corner)),
    1,
  );
  const reference = samples.subarray(lead).map((each) => each + random.normal());
  const occasion = occasionOf('beside-reference', { reference: 'reference', uncertainty: 0.01 });
  const beside: ServingChannel = {
    recording: 'beside-reference.wav',
    channel: '2',
    name: 'reference',
    serves: 'reference',
    senses: 'acceleration',
    statement: inVolts({ sensitivity: answer(1) }),
    measures: measuresOf(reference, rate),
  };
  const noisy = (volts: Float64Array) => {
    const own = 0.05 * 20 * straight.sensitivity;
    return volts.map((each) => each + own * random.normal());
  };
  const one = told(making, asMeasured({ ...late, volts: noisy(late.volts) }, occasion), [beside]);
  const other = told(making, asMeasured({ ...straight, volts: noisy(low) }, occasion), [beside]);
  return [
    { kind: 'delay', injected: size, found: of(one, 'delay') },
    { kind: 'upper-corner', injected: corner, found: of(other, 'upper-corner') },
  ];
}

function of(found: readonly Identified[], kind: string, what?: string): Identified | undefined {
  return found.find((each) => each.kind === kind && each.of === what);
}

/** The records by which something is recovered. */
export const ways: Readonly<Record<string, (making: Making) => readonly Recovered[]>> = {
  taps: byTaps,
  calibrator: byCalibrator,
  standstill: byStandstill,
  'power on': byPowerOn,
  overload: byOverload,
  reference: besideReference,
};

/** What one record recovers of what was put into the chain of a place, drawn by a seed. */
export function recoveredBy(way: string, place: ChainedPoint, seed: number): readonly Recovered[] {
  const own = seed * 16 + Object.keys(ways).indexOf(way);
  return ways[way]!({ place, seed: own, random: randomFrom(own * 256) });
}

export function covers({ found, injected }: Recovered): boolean {
  return found !== undefined && injected >= found.interval.low && injected <= found.interval.high;
}
