import { heard } from '../acquisition/set-kind.ts';
import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
import {
  type Answer,
  answer,
  type Band,
  type Motion,
  motionOrder,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { complex } from '../signal/complex.ts';
import { envelopeDetector, envelopeMethod } from '../signal/measures/envelope.ts';
import { envelopeBandChoice } from '../signal/measures/envelope-band.ts';
import { measured } from '../signal/measures/gathering.ts';
import { type AmplitudeSpectrum, amplitudeSpectrum } from '../signal/spectrum.ts';
import { hann } from '../signal/windows/hann.ts';
import { toTheOrder } from './differentiation.ts';
import { passBand } from './recorded.ts';
import type { LineFinder } from './seen-course.ts';
import { nextPowerOfTwo, SpectralFilter } from './spectral.ts';
import type { RehearsedRecord } from './through-chain.ts';

/** A frequency at which a rolling bearing would strike, looked for in the envelope. */
export interface EnvelopeLine {
  /** `pump-drive-end/outer-ring`. */
  readonly name: string;
  readonly frequency: number;
  /** As rms, of the motion of the envelope. */
  readonly found: number;
  readonly noise: number;
  readonly decibels: number;
  readonly seen: boolean;
  /** How many of its first harmonics stand out as well as itself, of how many that were looked for. */
  readonly harmonics: number;
  readonly lookedFor: number;
}

/** The envelope spectrum of a record, with the band it is of and why that one. */
export interface EnvelopeSeen {
  readonly band: Band;
  readonly because: string;
  /** What the envelope is of: acceleration, whatever the transducer senses, where the point has a burst to see. */
  readonly motion: Motion;
  readonly method: string;
  readonly spectrum: AmplitudeSpectrum;
  readonly lines: readonly EnvelopeLine[];
}

const order = 4;
/** Harmonics looked for of a bearing frequency, itself the first. */
const lookedFor = 4;
const leastSamples = 1024;
/** Cycles of the lower end of the band that are left out at both ends of the record, where the cut rings. */
const cyclesCut = 20;
const method = `band cut out of the transform of the record; then ${envelopeMethod}`;

/** The envelope of the band where bursts are to be seen; of the most impulsive one where the point names no such band. */
export function envelopeSeen(
  record: RehearsedRecord,
  machine: DesignedMachine,
  designed: DesignedPoint,
  find: LineFinder,
  detection: number,
): Answer<EnvelopeSeen> {
  if (record.loop !== undefined) {
    return unanswered([{ of: record.of, what: 'envelope spectrum (the sensor sends one number)' }]);
  }
  return thenAnswer(bandOf(record, designed), ({ band, because, motion }) => {
    const { rate } = record;
    const cut = Math.ceil((cyclesCut / band.low) * rate);
    const inBand = bandOnly(record, band, motion).slice(cut, -cut);
    const detector = envelopeDetector(rate, band.low, band.high, order);
    const envelope = detector.through(inBand);
    const length = nextPowerOfTwo(envelope.length + 1) / 2;
    if (length < leastSamples) return unanswered([{ of: record.of, what: 'record long enough for an envelope' }]);
    const samples = envelope.slice(-length);
    const mean = samples.reduce((sum, each) => sum + each, 0) / length;
    const centred = samples.map((each) => each - mean);
    const spectrum = amplitudeSpectrum(centred, rate / detector.every, hann);
    const first = cut + detector.settling + (envelope.length - length) * detector.every;
    const inside = { spectrum, samples: centred, first, every: detector.every };
    const rows = heard(machine.frequencies, designed.stated.statement).rows.filter(({ line }) =>
      machine.stated.train.elements.some(({ name, kind }) => name === line.element && kind === 'rolling-bearing'),
    );
    const lines = rows.flatMap(({ line }): readonly EnvelopeLine[] => {
      const each = Array.from({ length: lookedFor }, (_, k) => find([{ line, times: 1 }], inside, k + 1));
      const found = each.flatMap((one) => (one.known && one.value !== undefined ? [one.value] : []));
      const [itself] = found;
      if (itself === undefined) return [];
      const stand = found.filter(({ decibels }) => decibels >= detection).length;
      return [
        {
          name: line.name,
          ...itself,
          // One line alone may be a neighbour's, or noise; a bearing that is struck shows several.
          seen: itself.decibels >= detection && stand >= found.length / 2,
          harmonics: stand,
          lookedFor: found.length,
        },
      ];
    });
    return answer({ band, because, motion, method, spectrum, lines });
  });
}

function bandOf(
  record: RehearsedRecord,
  designed: DesignedPoint,
): Answer<{ readonly band: Band; readonly because: string; readonly motion: Motion }> {
  const highest = passBand * record.rate;
  const burst = designed.stated.statement.targets.find((each) => each.observe.scansBand);
  const stated = burst === undefined ? undefined : valueIfStated(burst.band);
  if (burst !== undefined && stated !== undefined && stated.low < 0.8 * highest) {
    const cut = stated.high > highest;
    return answer({
      band: { low: stated.low, high: Math.min(stated.high, highest) },
      motion: valueIfStated(burst.smallest)?.quantity ?? record.senses,
      because: `The band of the target '${burst.name}'${cut ? ', as far as the record reaches' : ''}.`,
    });
  }
  const from = 0.02 * record.rate;
  const choice = measured(
    envelopeBandChoice({ rate: record.rate, from, to: highest, leastWidth: from }),
    record.motion,
  );
  return thenAnswer(choice, ({ chosen, tried, reason }) => {
    const band = chosen.known ? chosen.value : tried[0];
    return band === undefined
      ? unanswered([{ of: record.of, what: 'band for an envelope' }])
      : answer({ band: { low: band.low, high: band.high }, because: reason, motion: record.senses });
  });
}

/** A low line of a velocity would stand far above the bursts: what is not in the band is cut off, not merely weakened. */
function bandOnly({ motion, rate, senses }: RehearsedRecord, band: Band, as: Motion): Float64Array {
  const turned = motionOrder[as] - motionOrder[senses];
  const within = (frequency: number) => frequency >= band.low && frequency <= band.high;
  return new SpectralFilter(motion.length, rate, cyclesCut / band.low).through(
    motion,
    (frequency) => (within(frequency) ? toTheOrder(complex(0, 2 * Math.PI * frequency), turned) : complex(0, 0)),
    0,
  );
}
