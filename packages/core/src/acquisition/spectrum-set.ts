import { bareNumber, measured, type Said, said } from '../finding/measure.ts';
import type { Answer, Band, Fraction } from '../quantity/index.ts';
import { lineDistance, recordLength, samplesFor, samplingRateFor } from '../signal/spectrum-settings.ts';

/** One thing a set of settings must do, and the number that follows from it. */
export interface Requirement {
  readonly why: string;
  readonly value: number;
}

/** What a record must show: up to which frequency, which neighbours apart, for how long. */
export interface RecordNeed {
  readonly name: string;
  readonly purpose: string;
  /** The spectrum must reach beyond each of these, in hertz. */
  readonly reach: readonly Requirement[];
  /** Lines this far apart must be told apart, in hertz: a third of each is the widest line spacing. */
  readonly apart: readonly Requirement[];
  /** The record must last at least each of these, in seconds. */
  readonly last: readonly Requirement[];
  /** The band before demodulation, for an envelope. */
  readonly envelopeBand?: Band;
}

/** Settings for one kind of record, and why each is what it is. */
export interface SpectrumSet {
  readonly name: string;
  readonly purpose: string;
  readonly highestFrequency: number;
  readonly lines: number;
  readonly resolution: number;
  readonly recordLength: number;
  readonly samplingRate: number;
  readonly samples: number;
  readonly window: string;
  readonly averages: number;
  readonly envelopeBand?: Band;
  /** Sampling of the raw record before demodulation, and how many samples it holds. */
  readonly rawSamplingRate?: number;
  readonly rawSamples?: number;
  /** Where the samples follow the shaft: frequencies and times above are those at its highest speed. */
  readonly orders?: OrderSettings;
  /** How far its farthest line spreads while the speed strays as stated. */
  readonly smear?: Smear;
  /** Integration to displacement: the high-pass that keeps drift out, and what it takes from the slowest line. */
  readonly integration?: IntegrationFilter;
  /** Lowest frequency that must not be filtered away. */
  readonly from?: number;
  /** Where amplitudes are read by the angle of the crank. */
  readonly crank?: CrankReading;
  /** What decided: the farthest reach, the closest neighbours, the longest record. */
  readonly reach: Requirement | undefined;
  readonly apart: Requirement | undefined;
  readonly last: Requirement | undefined;
  readonly reasons: readonly Said[];
}

/** Sampling by the turn: orders stand still whatever the speed does. */
export interface OrderSettings {
  readonly samplesPerTurn: number;
  readonly turns: number;
  /** Distance of two lines in orders: one over the turns. */
  readonly resolution: number;
  readonly highest: number;
  /** How far the speed moves in one record while the machine runs up, in hertz. */
  readonly speedChange?: number;
  /** Whose turns are counted, where they are not those of the shaft itself. */
  readonly of?: string;
  /** The record at the lowest speed, in seconds. */
  readonly longest?: number;
  /** Where the turns are counted by the pulses of another shaft. */
  readonly by?: PulseCount;
}

/** Turns of one shaft by the pulses of another, with the exact ratio between them. */
export interface PulseCount {
  readonly shaft: string;
  readonly ratio: Fraction;
  /** Turns of the shaft with the pulses, in the record. */
  readonly turns: number;
  /** What a ratio written with four digits would do: the ratio, and how far the record would drift, in degrees. */
  readonly rounded: { readonly ratio: number; readonly drift: number };
}

/** How far a line spreads, in hertz and in lines of the spectrum. */
export interface Smear {
  readonly hertz: number;
  readonly lines: number;
}

/** A Butterworth high-pass before integration, and its error at the slowest line, as a fraction. */
export interface IntegrationFilter {
  readonly corner: number;
  readonly order: number;
  readonly error: number;
}

/** Samples and windows by the angle of a crank. */
export interface CrankReading {
  readonly turns: number;
  readonly degreesPerSample: number;
  readonly windows: number;
}

/** Three lines of a Hann window apart, two neighbours of like size are two peaks with a dip between them. */
export const linesApart = 3;
const fewestLines = 400;
const mostLines = 409_600;

/** F_max is the next of 1, 2, 5 · 10ⁿ above what must be reached; lines the fewest of 400 · 2ⁿ that do the rest. */
export function spectrumSet(need: RecordNeed): SpectrumSet {
  const reach = largest(need.reach);
  const highestFrequency = nextOfSeries(reach?.value ?? 1000);
  const spacing = smallest(need.apart);
  const lasting = largest(need.last);
  let lines = fewestLines;
  const enough = () =>
    (spacing === undefined || lineDistance(lines, highestFrequency) <= spacing.value / linesApart) &&
    (lasting === undefined || recordLength(lines, highestFrequency) >= lasting.value);
  while (!enough() && lines < mostLines) lines *= 2;
  return {
    name: need.name,
    purpose: need.purpose,
    highestFrequency,
    lines,
    resolution: lineDistance(lines, highestFrequency),
    recordLength: recordLength(lines, highestFrequency),
    samplingRate: samplingRateFor(highestFrequency),
    samples: samplesFor(lines),
    window: 'hann',
    averages: usualAverages,
    ...(need.envelopeBand === undefined ? {} : rawRecord(need.envelopeBand, recordLength(lines, highestFrequency))),
    reach,
    apart: spacing,
    last: lasting,
    reasons: reasons(reach, spacing, lasting, enough(), need.envelopeBand),
  };
}

/** The record before demodulation: sampled for the whole of its band, as long as the envelope lasts. */
function rawRecord(envelopeBand: Band, seconds: number) {
  const rawSamplingRate = samplingRateFor(envelopeBand.high);
  return { envelopeBand, rawSamplingRate, rawSamples: Math.round(rawSamplingRate * seconds) };
}

/** Four averages halve the scatter of the noise lines. Common practice, no source. */
const usualAverages = 4;

function reasons(
  reach: Requirement | undefined,
  spacing: Requirement | undefined,
  lasting: Requirement | undefined,
  enough: boolean,
  envelope: Band | undefined,
): readonly Said[] {
  return [
    ...(reach === undefined ? [] : [said`F_max reaches beyond ${measured('frequency', reach.value)}: ${reach.why}`]),
    ...(spacing === undefined
      ? []
      : [
          said`line spacing at most ${measured('frequency', spacing.value / linesApart)}, a third of ${measured('frequency', spacing.value)}: ${spacing.why}`,
        ]),
    ...(lasting === undefined ? [] : [said`record of at least ${bareNumber(lasting.value)} s: ${lasting.why}`]),
    `Hann window: tones and noise together; ${usualAverages} averages halve the scatter of the noise`,
    ...(envelope === undefined
      ? []
      : [said`raw sampling ${bareNumber(2.56)} × ${measured('frequency', envelope.high)} before demodulation`]),
    ...(enough ? [] : [`even ${mostLines} lines do not tell these apart: use a zoom, or order tracking`]),
  ];
}

function largest(requirements: readonly Requirement[]): Requirement | undefined {
  return [...requirements].sort((a, b) => b.value - a.value)[0];
}

function smallest(requirements: readonly Requirement[]): Requirement | undefined {
  return [...requirements].sort((a, b) => a.value - b.value)[0];
}

/** The next of 1, 2, 5 · 10ⁿ above a value; a value of the series itself takes the next one, so that side lines fit. */
export function nextOfSeries(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const steps = [1, 2, 5, 10, 20];
  return decade * steps.find((step) => decade * step > value * (1 + 1e-9))!;
}

/** How far a line spreads while the speed wanders: f · relative change, in hertz and in lines. */
export function smear(frequency: number, relativeChange: number, resolution: number): Smear {
  const hertz = frequency * relativeChange;
  return { hertz, lines: hertz / resolution };
}

/** Requirements from answers: what is not known is not required, and is named where the set is shown. */
export function required(entries: readonly { readonly why: string; readonly value: Answer<number> }[]): {
  readonly known: readonly Requirement[];
  readonly unknown: readonly string[];
} {
  const known: Requirement[] = [];
  const unknown: string[] = [];
  for (const { why, value } of entries) {
    if (value.known) known.push({ why, value: value.value });
    else unknown.push(`${why}: ${value.missing.map((each) => `${each.what} of ${each.of}`).join(', ')} not known`);
  }
  return { known, unknown };
}
