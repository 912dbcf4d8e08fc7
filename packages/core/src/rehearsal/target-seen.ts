import type { TargetStatement } from '../demand/statement.ts';
import type { DesignedMachine } from '../design/design.ts';
import {
  type Answer,
  answer,
  type Band,
  type Level,
  level,
  type Motion,
  motionOrder,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { realFourierTransform } from '../signal/fft.ts';
import { termsOf } from './healthy-parts.ts';
import type { LineFinder, LineSamples } from './seen-course.ts';
import { inverseRealTransform } from './spectral.ts';
import type { RehearsedRecord } from './through-chain.ts';

/** What an analyst sees of one target in a record. */
export interface TargetSeen {
  readonly target: string;
  readonly kind: string;
  readonly frequency?: number;
  readonly band?: Band;
  /** As the chain shows it in the record. */
  readonly found: Level<Motion>;
  /** What it stands against: noise of one line, or what a band of noise alone would reach. */
  readonly against: Level<Motion>;
  readonly decibels: number;
  readonly seen: boolean;
}

/** Where targets are looked for. */
export interface Look {
  readonly record: RehearsedRecord;
  readonly machine: DesignedMachine;
  readonly detection: number;
  readonly lines: LineFinder;
  readonly inside: LineSamples;
}

/**
 * A line is seen where it stands above the noise of its neighbours by the detection of the policy, in decibels; a burst
 * where the peak in its band does so against the largest of as many samples of normal noise, σ·√(2·ln N), by a third of
 * it; an overall value is shown against the smallest that it must show.
 */
export function targetSeen(target: TargetStatement, look: Look): Answer<TargetSeen> {
  const motion = valueIfStated(target.smallest)?.quantity;
  if (motion === undefined) return unanswered([{ of: target.name, what: 'smallest level' }]);
  if (look.record.loop !== undefined && target.observe.kind !== 'overall') {
    return unanswered([{ of: target.name, what: 'spectrum (the sensor sends one number)' }]);
  }
  if (target.observe.atRest) return unanswered([{ of: target.name, what: 'record of a position at rest' }]);
  const band = valueIfStated(target.band);
  if (target.observe.kind === 'line') return lineSeen(target, motion, look);
  if (band === undefined) return unanswered([{ of: target.name, what: 'band' }]);
  return answer(
    target.observe.scansBand ? burstSeen(target, motion, band, look) : overallSeen(target, motion, band, look),
  );
}

function lineSeen(
  target: TargetStatement,
  motion: Motion,
  { machine, record, detection, lines, inside }: Look,
): Answer<TargetSeen> {
  const reference = valueIfStated(target.frequency);
  const terms = reference === undefined ? undefined : termsOf(reference, machine.frequencies);
  if (terms === undefined) return unanswered([{ of: target.name, what: 'frequency' }]);
  return thenAnswer(lines(terms, inside), (line): Answer<TargetSeen> => {
    if (line === undefined) return unanswered([{ of: target.name, what: 'line inside the band of the record' }]);
    const turned = (2 * Math.PI * line.frequency) ** (motionOrder[motion] - motionOrder[record.senses]);
    return answer({
      target: target.name,
      kind: target.observe.kind,
      frequency: line.frequency,
      found: level(motion, line.found * turned, 'rms'),
      against: level(motion, line.noise * turned, 'rms'),
      decibels: line.decibels,
      seen: line.decibels >= detection,
    });
  });
}

function burstSeen(
  target: TargetStatement,
  motion: Motion,
  band: Band,
  { inside, record, detection }: Look,
): TargetSeen {
  const samples = inBand(inside.samples, record, motion, band);
  let peak = 0;
  for (const each of samples) peak = Math.max(peak, Math.abs(each));
  const sizes = samples.map(Math.abs).sort();
  // Half of normal noise lies within 0.6745 of its deviation: bursts, being short, hardly move that.
  const deviation = sizes[sizes.length >> 1]! / 0.6745;
  const largest = deviation * Math.sqrt(2 * Math.log(samples.length));
  const decibels = 20 * Math.log10(peak / largest);
  return {
    target: target.name,
    kind: target.observe.kind,
    band: { low: band.low, high: band.high },
    found: level(motion, peak, 'peak'),
    against: level(motion, largest, 'peak'),
    decibels,
    seen: decibels >= detection / 3,
  };
}

function overallSeen(target: TargetStatement, motion: Motion, band: Band, { record, inside }: Look): TargetSeen {
  const { spectrum } = inside;
  const turned = (frequency: number) =>
    (2 * Math.PI * frequency) ** (2 * (motionOrder[motion] - motionOrder[record.senses]));
  let power = 0;
  for (let k = Math.max(1, Math.ceil(band.low / spectrum.resolution)); k * spectrum.resolution <= band.high; k++) {
    power += ((spectrum.amplitudes[k] ?? 0) ** 2 / 2) * turned(k * spectrum.resolution);
  }
  const shown = record.loop === undefined ? Math.sqrt(power / spectrum.noiseBandwidth) : record.motion.at(-1)!;
  const smallest = valueIfStated(target.smallest)!;
  const decibels = 20 * Math.log10(shown / smallest.value);
  return {
    target: target.name,
    kind: target.observe.kind,
    band: { low: band.low, high: band.high },
    found: level(motion, shown, record.loop?.range.detector ?? 'rms'),
    against: smallest,
    decibels,
    seen: decibels >= 0,
  };
}

/** The samples of a band, as the motion of a target. */
function inBand(samples: Float64Array, record: RehearsedRecord, motion: Motion, band: Band): Float64Array {
  const { length } = samples;
  const lines = realFourierTransform(length)(samples);
  const order = motionOrder[motion] - motionOrder[record.senses];
  for (let k = 0; k < lines.re.length; k++) {
    const frequency = (k * record.rate) / length;
    const inside = frequency >= band.low && frequency <= band.high;
    const size = inside ? (2 * Math.PI * frequency) ** order : 0;
    lines.re[k]! *= size;
    lines.im[k]! *= size;
  }
  return inverseRealTransform(length)(lines);
}
