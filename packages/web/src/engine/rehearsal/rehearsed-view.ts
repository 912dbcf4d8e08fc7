import type { Rehearsal, RehearsedChain } from '@soundpost/commands/pure';
import {
  type Answer,
  type AsSeen,
  type DefectKind,
  type DefectStatement,
  type DesignedMachine,
  defectKinds,
  level,
  type Motion,
  type RehearsedMotion,
  type RehearsedRecord,
  type Showing,
  showLevel,
  showNumber,
  showQuantity,
  type TargetInRecord,
  theMissing,
} from '@soundpost/core';
import { alike, envelopeCurve, spectrumCurve, waveformCurve } from './curves.ts';
import type { HeardView, RehearsalView, RehearsedChainView, SeenView } from './rehearsal-views.ts';

/** Turns of the slowest shaft that the waveform shows. */
const turnsShown = 6;

/** A rehearsal as the page shows it. */
export function rehearsalView(
  { motion, chains }: Rehearsal,
  machine: DesignedMachine,
  showing: Showing,
): RehearsalView {
  if (!motion.known) {
    return {
      speed: '',
      contents: [],
      assumed: [],
      source: undefined,
      chains: chains.map((each) => unknownChain(each)),
    };
  }
  const { contents, speed, reference } = motion.value;
  const slowest = Math.max(1, Math.min(speed.first, speed.last));
  const seconds = Math.min(1, turnsShown / slowest);
  const senses = chains.flatMap(({ record }) => (record.known ? [record.value.senses] : []))[0] ?? 'acceleration';
  const views = chains.map((each) => chainView(each, senses, seconds, showing));
  const curves = alike(views.map((each) => each.curves));
  const turning = (value: number) => showQuantity('shaft speed', value, showing);
  return {
    speed: `${along(speed, turning)} of ${reference}, ${machine.stated.name}`,
    contents: contents.map(({ name, by, frequency, band, level: stated }) => ({
      name,
      by,
      where:
        frequency === undefined
          ? band === undefined
            ? ''
            : `${hertz(band.low, showing)} to ${hertz(band.high, showing)}`
          : along(frequency, (value) => hertz(value, showing)),
      level: showLevel(stated, showing),
    })),
    assumed: [...new Set(contents.flatMap((each) => each.assumed))],
    chains: views.map((each, index) => ({ ...each, curves: curves[index]! })),
    source: sourceHeard(motion.value, chains),
  };
}

function along({ first, last }: { readonly first: number; readonly last: number }, shown: (value: number) => string) {
  return first === last ? shown(last) : `${shown(first)} to ${shown(last)}`;
}

function hertz(value: number, showing: Showing): string {
  return showQuantity('frequency', value, showing);
}

function unknownChain({ name, defects, record }: RehearsedChain): RehearsedChainView {
  return {
    name,
    defects: defects.map(defectWords),
    unknown: record.known ? undefined : theMissing(record.missing),
    curves: [],
    envelope: '',
    targets: [],
    lines: [],
    overall: [],
    notes: [],
    heard: undefined,
  };
}

function chainView(chain: RehearsedChain, motion: Motion, seconds: number, showing: Showing): RehearsedChainView {
  const { record, seen } = chain;
  if (!record.known || !seen.known) return unknownChain(chain);
  const loop = record.value.loop !== undefined;
  const envelope = envelopeCurve(seen.value, showing);
  return {
    ...unknownChain(chain),
    curves: loop
      ? [waveformCurve(record.value, record.value.motion.length / record.value.rate, showing)]
      : [
          waveformCurve(record.value, seconds, showing),
          spectrumCurve(record.value, seen.value, motion, showing),
          ...(envelope === undefined ? [] : [envelope]),
        ],
    envelope: envelopeWords(seen.value, showing),
    targets: seen.value.targets.map((each) => targetRow(each, showing)),
    lines: lineRows(seen.value, showing),
    overall: overallRows(seen.value, record.value, showing),
    notes: record.value.notes,
    heard: loop ? undefined : heardOf(record.value.motion, record.value.rate),
  };
}

function targetRow({ target, seen }: TargetInRecord, showing: Showing): SeenView {
  const none = { name: target, where: '', shown: '', against: '', decibels: '' };
  if (!seen.known) return { ...none, verdict: `cannot tell: ${theMissing(seen.missing)}`, seen: undefined };
  const { kind, frequency, band, found, against, decibels, seen: is } = seen.value;
  const range = band === undefined ? '' : `${hertz(band.low, showing)} to ${hertz(band.high, showing)}`;
  return {
    name: target,
    where: frequency === undefined ? range : hertz(frequency, showing),
    shown: showLevel(found, showing),
    against: showLevel(against, showing),
    decibels: showNumber(decibels, 3, showing.decimal),
    verdict: kind === 'overall' ? (is ? 'at or above its smallest' : 'below its smallest') : is ? 'seen' : 'hidden',
    seen: is,
  };
}

function lineRows({ envelope }: AsSeen, showing: Showing): readonly SeenView[] {
  if (!envelope.known) return [];
  const { lines, motion } = envelope.value;
  return lines.map(({ name, frequency, found, noise, decibels, harmonics, lookedFor, seen }) => ({
    name,
    where: hertz(frequency, showing),
    shown: showLevel(level(motion, found, 'rms'), showing),
    against: showLevel(level(motion, noise, 'rms'), showing),
    decibels: showNumber(decibels, 3, showing.decimal),
    verdict: seen
      ? `seen, ${harmonics} of ${lookedFor} harmonics`
      : harmonics > 0
        ? `not told: ${harmonics} of ${lookedFor} harmonics`
        : 'nothing there',
    seen: seen ? true : undefined,
  }));
}

function envelopeWords({ envelope }: AsSeen, showing: Showing): string {
  if (!envelope.known) return `No envelope: ${theMissing(envelope.missing)}.`;
  const { band, because, motion, method } = envelope.value;
  return `Envelope of the ${motion} from ${hertz(band.low, showing)} to ${hertz(band.high, showing)}. ${because} Method: ${method}.`;
}

function overallRows({ overall }: AsSeen, record: RehearsedRecord, showing: Showing) {
  const share = (value: number) => `${showNumber(100 * value, 3, showing.decimal)} %`;
  const limits = [
    { what: 'Of the record at an end of the swing', shown: share(record.clippedShare) },
    { what: 'at the slew of the cable', shown: share(record.slewedShare) },
    { what: 'at the range of the input', shown: share(record.overRangeShare) },
    { what: 'beyond a limit of the transducer', shown: share(record.beyondLimitShare) },
  ];
  if (record.loop !== undefined) {
    const last = record.loop.amperes.at(-1) ?? 0;
    const counts = record.loop.counts.at(-1) ?? 0;
    return [
      {
        what: 'Indicated at the end',
        shown: showLevel(level(record.senses, record.motion.at(-1) ?? 0, record.loop.range.detector), showing),
      },
      { what: 'Current of the loop at the end', shown: showQuantity('current', last, showing) },
      { what: 'Counts of the card', shown: showNumber(counts, 5, showing.decimal) },
      ...limits,
    ];
  }
  if (!overall.known) return limits;
  const { acRms, peak, crest, kurtosis } = overall.value;
  const number = (value: Answer<number>) => (value.known ? showNumber(value.value, 3, showing.decimal) : '?');
  return [
    { what: 'Root mean square', shown: showLevel(level(record.senses, acRms, 'rms'), showing) },
    { what: 'Peak', shown: showLevel(level(record.senses, peak, 'peak'), showing) },
    { what: 'Crest factor', shown: number(crest) },
    { what: 'Kurtosis', shown: number(kurtosis) },
    ...limits,
  ];
}

function defectWords({ kind: word, size }: DefectStatement): string {
  const kind = (defectKinds as readonly DefectKind[]).find((each) => each.kind === word);
  if (kind === undefined) return word;
  return `${kind.name} (${kind.sized}: ${showQuantity(kind.quantity, size ?? kind.usual)})`;
}

/** The motion itself, thinned to the rate of the record. */
function sourceHeard(motion: RehearsedMotion, chains: readonly RehearsedChain[]): HeardView | undefined {
  const record = chains.flatMap((each) => (each.record.known ? [each.record.value] : []))[0];
  if (record === undefined) return undefined;
  const every = Math.round(motion.rate / record.rate);
  const count = Math.floor((motion.samples.length - motion.lead) / every);
  return heardOf(
    Float64Array.from({ length: count }, (_, n) => {
      let sum = 0;
      for (let k = 0; k < every; k++) sum += motion.samples[motion.lead + n * every + k]!;
      return sum / every;
    }),
    record.rate,
  );
}

/** A quarter of full scale at its greatest: loud enough to hear, and no shock in headphones. */
const loudest = 0.25;
/** Rates a browser plays. */
const playable = { least: 8000, most: 96_000 };

function heardOf(samples: Float64Array, rate: number): HeardView | undefined {
  if (rate < playable.least || rate > playable.most) return undefined;
  const mean = samples.reduce((sum, each) => sum + each, 0) / samples.length;
  let most = 0;
  for (const each of samples) most = Math.max(most, Math.abs(each - mean));
  const scale = most > 0 ? loudest / most : 0;
  return { rate, samples: Float32Array.from(samples, (each) => (each - mean) * scale) };
}
