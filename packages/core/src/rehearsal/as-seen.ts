import type { TargetStatement } from '../demand/statement.ts';
import { sees } from '../demand/target.ts';
import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
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
import { type AmplitudeSpectrum, amplitudeSpectrum } from '../signal/spectrum.ts';
import { hann } from '../signal/windows/hann.ts';
import { turningCourse } from './course.ts';
import { termsOf } from './healthy-parts.ts';
import type { RehearsalScript } from './script.ts';
import { inverseRealTransform, nextPowerOfTwo } from './spectral.ts';
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

export interface TargetInRecord {
  readonly target: string;
  readonly seen: Answer<TargetSeen>;
}

/** A record as the analyst sees it. */
export interface AsSeen {
  readonly spectrum: AmplitudeSpectrum;
  readonly targets: readonly TargetInRecord[];
}

const mostLines = 2 ** 20;

/**
 * Spectrum and targets of a record. A line is seen where it stands above the noise of its neighbours by the detection of
 * the policy, in decibels; a burst where the peak in its band does so against the largest of as many samples of normal
 * noise, σ·√(2·ln N), by a third of it; an overall value is shown with the noise its chain would add alone.
 */
export function asSeen(
  record: RehearsedRecord,
  machine: DesignedMachine,
  designed: DesignedPoint,
  script: RehearsalScript,
  detection: number,
): AsSeen {
  const length = Math.min(mostLines, nextPowerOfTwo(record.motion.length + 1) / 2);
  const stretch = record.motion.slice(-length);
  const mean = stretch.reduce((sum, each) => sum + each, 0) / length;
  const centred = stretch.map((each) => each - mean);
  const spectrum = amplitudeSpectrum(centred, record.rate, hann);
  const reference = designed.appraisal?.prediction.chain.transducer.reference ?? 'casing';
  const targets = designed.stated.statement.targets.filter((each) => sees(reference, each.reference));
  const look = { record, machine, script, detection, spectrum, centred };
  return { spectrum, targets: targets.map((each) => ({ target: each.name, seen: seenIn(each, look) })) };
}

interface Look {
  readonly record: RehearsedRecord;
  readonly machine: DesignedMachine;
  readonly script: RehearsalScript;
  readonly detection: number;
  readonly spectrum: AmplitudeSpectrum;
  readonly centred: Float64Array;
}

function seenIn(target: TargetStatement, look: Look): Answer<TargetSeen> {
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

function lineSeen(target: TargetStatement, motion: Motion, look: Look): Answer<TargetSeen> {
  const { machine, script, record, spectrum, detection } = look;
  const reference = valueIfStated(target.frequency);
  const terms = reference === undefined ? undefined : termsOf(reference, machine.frequencies);
  if (terms === undefined) return unanswered([{ of: target.name, what: 'frequency' }]);
  const course = turningCourse(machine.stated.train, machine.frequencies, script.course, {
    samples: 2,
    rate: record.rate,
    from: 0,
  });
  return thenAnswer(course, (turning) =>
    thenAnswer(turning.follow(terms), (along): Answer<TargetSeen> => {
      const frequency = along.frequency(1);
      const centre = Math.round(frequency / spectrum.resolution);
      if (!(frequency > 0) || centre + 50 >= spectrum.amplitudes.length / 1.28) {
        return unanswered([{ of: target.name, what: 'line inside the band of the record' }]);
      }
      const at = (k: number) => spectrum.amplitudes[k] ?? 0;
      const found = Math.max(...[-2, -1, 0, 1, 2].map((k) => at(centre + k))) / Math.SQRT2;
      const neighbours = Array.from({ length: 36 }, (_, k) => [at(centre - 6 - k), at(centre + 6 + k)])
        .flat()
        .filter((each) => each > 0)
        .map((each) => each ** 2)
        .sort((a, b) => a - b);
      // Squares of noise lines are exponential: their mean is their median over ln 2.
      const noise = Math.sqrt((neighbours[neighbours.length >> 1] ?? 0) / Math.LN2 / 2);
      const turned = (2 * Math.PI * frequency) ** (motionOrder[motion] - motionOrder[record.senses]);
      const decibels = 20 * Math.log10(found / noise);
      return answer({
        target: target.name,
        kind: target.observe.kind,
        frequency,
        found: level(motion, found * turned, 'rms'),
        against: level(motion, noise * turned, 'rms'),
        decibels,
        seen: decibels >= detection,
      });
    }),
  );
}

function burstSeen(target: TargetStatement, motion: Motion, band: Band, look: Look): TargetSeen {
  const samples = inBand(look.centred, look.record, motion, band);
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
    seen: decibels >= look.detection / 3,
  };
}

function overallSeen(target: TargetStatement, motion: Motion, band: Band, look: Look): TargetSeen {
  const { record, spectrum } = look;
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
