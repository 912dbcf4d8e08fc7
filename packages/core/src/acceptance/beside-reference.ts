import { type Answer, answer, fromAll, motionOrder, thenAnswer, unanswered, valueIfStated } from '../quantity/index.ts';
import { type CrossSpectrum, crossSpectrum, responseDeviation } from '../signal/measures/coherence.ts';
import { sharedByLines } from '../signal/measures/power-density.ts';
import type { ChannelMeasures } from './channel-measures.ts';
import type { CheckedRecord } from './check/check-kind.ts';
import { type MotionPerNumber, motionPerNumber, responseAt } from './expected.ts';
import { motionOf, recordName, type ServingChannel, voltsPerNumber } from './measured-record.ts';

/** Lines that both channels share this much count. */
const shared = 0.98;
/** Where the chain passes less than this of what it passes in its middle, its own corners decide. */
const passed = 0.5;

/** One line that both channels see. */
export interface SharedLine {
  readonly frequency: number;
  /** Found over expected, with the predicted response of the chain taken off. */
  readonly ratio: number;
  /** Phase of the channel after the reference, less the predicted one, in radians. */
  readonly phase: number;
  /** Relative standard deviation of the ratio, in radians that of the phase. */
  readonly deviation: number;
}

export interface OverReference {
  readonly lines: readonly SharedLine[];
  /** Lines whose neighbours are shared, whatever they are themselves: of noise, a choice by their own coherence would lean. */
  readonly broad: readonly SharedLine[];
  /** Weighted over the lines; NaN where there are none. */
  readonly ratio: number;
  /** In radians, and how much the lines agree on it, from 0 to 1. */
  readonly phase: number;
  readonly agreement: number;
  readonly deviation: number;
  readonly cross: CrossSpectrum;
}

/** What a channel reads over what the reference beside it reads, line by line and together. */
export function responseOverReference(looked: CheckedRecord): Answer<OverReference> {
  const { designed, record } = looked;
  const reference = referenceOf(looked);
  return thenAnswer(
    fromAll(
      {
        reference,
        own: motionPerNumber(designed, record),
        response: responseAt(designed),
        cross: thenAnswer(reference, ({ measures }) => crossOf(measures, record.measures)),
      },
      (known) => known,
    ),
    ({ reference: known, own, response, cross }) => {
      const order = motionOrder[own.motion] - motionOrder[known.per.motion];
      const [lines, broad]: [SharedLine[], SharedLine[]] = [[], []];
      for (let k = 2; k < cross.coherence.length - 2; k++) {
        const [own_, around] = [cross.coherence[k]! >= shared, aroundLine(cross.coherence, k) >= shared];
        if (!own_ && !around) continue;
        const frequency = k * cross.resolution;
        const expected = response(frequency);
        const gain = Math.hypot(expected.re, expected.im);
        if (gain < passed || gain > 1 / passed) continue;
        const scale = Math.abs(own.scale / known.per.scale) / (2 * Math.PI * frequency) ** order;
        const line: SharedLine = {
          frequency,
          ratio: (Math.hypot(cross.responseRe[k]!, cross.responseIm[k]!) * scale) / gain,
          phase: wrapped(
            Math.atan2(cross.responseIm[k]!, cross.responseRe[k]!) -
              (order * Math.PI) / 2 -
              Math.atan2(expected.im, expected.re) +
              (own.scale * known.per.scale < 0 ? Math.PI : 0),
          ),
          deviation: Math.max(1e-4, responseDeviation(cross, k)),
        };
        if (own_) lines.push(line);
        if (around) broad.push({ ...line, deviation: deviationBy(aroundLine(cross.coherence, k), cross) });
      }
      return answer({ lines, broad, cross, ...together(lines, cross) });
    },
  );
}

/** As `responseDeviation`, of a coherence that is not the line's own. */
function deviationBy(coherence: number, { effectiveAverages }: CrossSpectrum): number {
  return Math.max(1e-4, Math.sqrt((1 - coherence) / (2 * coherence * effectiveAverages)));
}

/** Mean coherence of the lines from three to twelve away on both sides: nearer ones share noise through the window. */
function aroundLine(coherence: Float64Array, line: number): number {
  let [sum, count] = [0, 0];
  for (let away = 3; away <= 12; away++) {
    for (const k of [line - away, line + away]) {
      if (k < 2 || k >= coherence.length - 2) continue;
      sum += coherence[k]!;
      count += 1;
    }
  }
  return count === 0 ? 0 : sum / count;
}

function together(lines: readonly SharedLine[], cross: CrossSpectrum) {
  let [weights, logs, re, im] = [0, 0, 0, 0];
  for (const { ratio, phase, deviation } of lines) {
    const weight = 1 / deviation ** 2;
    weights += weight;
    logs += weight * Math.log(ratio);
    re += weight * Math.cos(phase);
    im += weight * Math.sin(phase);
  }
  return {
    ratio: Math.exp(logs / weights),
    phase: Math.atan2(im, re),
    agreement: Math.hypot(re, im) / weights,
    // Neighbouring lines share noise through the window.
    deviation: Math.sqrt(sharedByLines(cross, cross.segments) / weights),
  };
}

interface Reference {
  readonly measures: ChannelMeasures;
  readonly per: MotionPerNumber;
}

/** The channel that the occasion names: one that serves as a reference, or a point of the same recording. */
function referenceOf({ record, serving, others, points }: CheckedRecord): Answer<Reference> {
  const { occasion } = record;
  const name = occasion.kind === 'beside-reference' ? valueIfStated(occasion.sheet.values.reference) : undefined;
  if (name === undefined) return unanswered([{ of: record.recording, what: 'name of the reference channel' }]);
  const channel = serving.find((each) => each.name === name || each.channel === name);
  if (channel !== undefined)
    return fromAll({ per: scaleOf(channel) }, ({ per }) => ({ measures: channel.measures, per }));
  const other = others.find(
    (each) => each.recording === record.recording && (each.channel === name || each.at === name),
  );
  const designed = other === undefined ? undefined : points.get(other.at);
  if (other === undefined || designed === undefined) {
    return unanswered([{ of: record.recording, what: `channel '${name}'` }]);
  }
  return fromAll({ per: motionPerNumber(designed, other) }, ({ per }) => ({ measures: other.measures, per }));
}

function scaleOf(channel: ServingChannel): Answer<MotionPerNumber> {
  const { unit, sensitivity } = channel.statement;
  const motion = unit.known ? motionOf(unit.value) : undefined;
  if (motion !== undefined) return answer({ motion, scale: 1 });
  const { senses } = channel;
  if (senses === undefined) return unanswered([{ of: recordName(channel), what: 'motion it senses' }]);
  return fromAll({ volts: voltsPerNumber(channel), sensitivity }, (known) => ({
    motion: senses,
    scale: known.volts / known.sensitivity,
  }));
}

/** The first over the second of what both excerpts hold. */
export function crossOf(first: ChannelMeasures, second: ChannelMeasures): Answer<CrossSpectrum> {
  return thenAnswer(
    fromAll({ one: first.rate, two: second.rate }, (known) => known),
    ({ one, two }) => {
      if (one !== two) return unanswered([{ of: 'both channels', what: 'one sampling rate' }]);
      const samples = Math.min(first.excerpt.length, second.excerpt.length);
      const length = Math.min(8192, 2 ** Math.floor(Math.log2(Math.max(1, samples / 8))));
      if (length < 256) return unanswered([{ of: 'both channels', what: 'length of at least 2048 samples' }]);
      const gathering = crossSpectrum({ rate: one, length, window: 'hann', overlap: 0.5, detrend: 'mean' });
      gathering.take(first.excerpt.subarray(0, samples), second.excerpt.subarray(0, samples));
      return gathering.result();
    },
  );
}

/** An angle in (−π, π]. */
export function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
