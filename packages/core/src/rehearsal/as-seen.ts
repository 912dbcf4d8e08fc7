import { sees } from '../demand/target.ts';
import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
import { type Answer, unanswered } from '../quantity/index.ts';
import { measured } from '../signal/measures/gathering.ts';
import { type Moments, moments } from '../signal/measures/moments.ts';
import { type AmplitudeSpectrum, amplitudeSpectrum } from '../signal/spectrum.ts';
import { hann } from '../signal/windows/hann.ts';
import { type EnvelopeSeen, envelopeSeen } from './envelope-seen.ts';
import type { RehearsedMotion } from './rehearsed-motion.ts';
import { lineFinder } from './seen-course.ts';
import { nextPowerOfTwo } from './spectral.ts';
import { type TargetSeen, targetSeen } from './target-seen.ts';
import type { RehearsedRecord } from './through-chain.ts';

export interface TargetInRecord {
  readonly target: string;
  readonly seen: Answer<TargetSeen>;
}

/** A record as the analyst sees it. Its waveform is the `motion` of the record. */
export interface AsSeen {
  readonly spectrum: AmplitudeSpectrum;
  readonly envelope: Answer<EnvelopeSeen>;
  /** Values of the whole record, in the motion that is sensed. */
  readonly overall: Answer<Moments>;
  readonly targets: readonly TargetInRecord[];
}

const mostLines = 2 ** 20;

/** Spectrum, envelope spectrum, values and targets of a record; lines are followed where the speed changes along it. */
export function asSeen(
  record: RehearsedRecord,
  machine: DesignedMachine,
  designed: DesignedPoint,
  motion: RehearsedMotion,
  detection: number,
): AsSeen {
  const length = Math.min(mostLines, nextPowerOfTwo(record.motion.length + 1) / 2);
  const stretch = record.motion.slice(-length);
  const mean = stretch.reduce((sum, each) => sum + each, 0) / length;
  const samples = stretch.map((each) => each - mean);
  const spectrum = amplitudeSpectrum(samples, record.rate, hann);
  const lines = lineFinder(machine, motion, record.rate);
  const inside = { spectrum, samples, first: record.motion.length - length, every: 1 };
  const reference = designed.appraisal?.prediction.chain.transducer.reference ?? 'casing';
  const targets = designed.stated.statement.targets.filter((each) => sees(reference, each.reference));
  const stands = motion.script.course.is === 'standstill';
  const look = { record, machine, detection, lines, inside };
  return {
    spectrum,
    envelope: envelopeSeen(record, machine, designed, lines, detection),
    overall: measured(moments(), record.motion),
    targets: targets.map((each) => ({
      target: each.name,
      seen: stands ? unanswered([{ of: each.name, what: 'record of a machine that turns' }]) : targetSeen(each, look),
    })),
  };
}
