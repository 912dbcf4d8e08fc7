import type { Finding } from '../../finding/finding.ts';
import {
  asMotion,
  asSineDetector,
  type Detector,
  type Field,
  type Level,
  type LevelWriting,
  levelField,
  levelIn,
  type Motion,
  motionOrder,
  motions,
  numberField,
  optional,
  parseLevel,
  parseLevelWriting,
  quantities,
  quantityField,
  Refusal,
  shortDetector,
  showLevelIn,
  showNumber,
  showQuantity,
  sineFactor,
} from '../../quantity/index.ts';
import { iso1683 } from '../../source/iso-1683.ts';
import { iso2041 } from '../../source/iso-2041.ts';
import { iso80000x3 } from '../../source/iso-80000-3.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';

type MotionWriting = LevelWriting<Motion>;

/** A level together with how it was asked to be written, and for which waveform it holds. */
export interface ConvertedLevel extends Level<Motion> {
  readonly written: MotionWriting;
  readonly waveform: 'a single sine' | 'any waveform';
}

/**
 * Whether a conversion holds for one sine only. A mere change of unit holds for every waveform, and so does the
 * derived peak, which is √2 × r.m.s. by definition.
 */
export function holdsForAnyWaveform(from: Level<Motion>, to: { quantity: Motion; detector: Detector }): boolean {
  const byDefinition: readonly Detector[] = ['rms', 'derived-peak'];
  const sameDetector = from.detector === to.detector;
  const derived = byDefinition.includes(from.detector) && byDefinition.includes(to.detector);
  return from.quantity === to.quantity && (sameDetector || derived);
}

const writingField: Field<MotionWriting> = {
  type: 'text',
  symbol: 'u',
  meaning: 'Unit and detector asked for',
  expected: "a unit of displacement, velocity or acceleration with a detector, such as 'um pp'",
  example: 'um pp',
  schema: { type: 'string', description: 'Unit and detector asked for', examples: ['um pp', 'dB re 1 um/s2 rms'] },
  read: (raw, writing) => {
    if (typeof raw === 'string') return parseLevelWriting(raw, motions, writing);
    throw new Refusal({ read: String(raw), expected: writingField.expected });
  },
  show: (value) => writingText(value),
  json: (value) => writingText(value),
};

function writingText(value: MotionWriting): string {
  const unit = value.reference === undefined ? value.unit : `dB re ${value.reference.written}`;
  return `${unit} ${shortDetector[value.detector]}`;
}

const convertedField: Field<ConvertedLevel> = {
  type: 'level',
  symbol: 'y',
  meaning: 'The same motion as asked for',
  expected: "a level with unit and detector, such as '81.03 um pp'",
  example: '81.03 um pp',
  schema: { type: 'string', description: 'The same motion as asked for' },
  read: (raw, writing) => {
    const text = String(raw);
    const unit = parseLevelWriting(text.replace(/^\s*[^\s]+\s+/, ''), motions, writing);
    return { ...parseLevel(text, motions, writing), written: unit, waveform: 'a single sine' };
  },
  show: (value, showing) => {
    const suffix = value.waveform === 'a single sine' ? ' (a single sine)' : '';
    return `${showLevelIn(value, value.written, showing)}${suffix}`;
  },
  json: (value) => ({
    value: value.value,
    unit: quantities[value.quantity].unit,
    detector: value.detector,
    ...(value.band === undefined ? {} : { band: { ...value.band, unit: 'Hz' } }),
    shown: showLevelIn(value, value.written),
    asked: { value: levelIn(value, value.written), in: writingText(value.written) },
    holds: value.waveform,
  }),
};

/**
 * The level as asked for: y = x · (2πf)^n · k, n the differentiations from its motion to the other, k the ratio of
 * the detectors for a sine. Needs the frequency only where the motion changes. Source: ISO 2041 (terms, from memory).
 */
export function convertedLevel(from: Level<Motion>, to: MotionWriting, frequency: number | undefined): ConvertedLevel {
  const turned = from.quantity === to.quantity ? from : asMotion(from, to.quantity, frequency ?? 0);
  const read = asSineDetector(turned, to.detector);
  const waveform = holdsForAnyWaveform(from, to) ? 'any waveform' : 'a single sine';
  return { ...read, written: to, waveform };
}

export const vibrationConversion = working({
  name: 'vibration-conversion',
  title: 'The same vibration as acceleration, velocity or displacement, and as another detector reads it',
  inputs: {
    from: levelField(motions, 'What was measured or stated', { symbol: 'x', example: '4.5 mm/s rms' }),
    frequency: optional(
      quantityField('frequency', 'Its frequency; needed where the motion changes', { symbol: 'f', example: '25 Hz' }),
    ),
    to: writingField,
  },
  outputs: {
    differentiations: output(
      numberField(
        'Differentiations between the two: the order is 0 for displacement, 1 for velocity, 2 for acceleration',
        { symbol: 'n' },
      ),
      'n = order(u) − order(x)',
    ),
    detectorRatio: output(
      numberField('Ratio of the detectors, reading a sine of r.m.s. 1 as: rms 1, peak √2, pp 2√2, average 2√2/π', {
        symbol: 'k',
      }),
      'k = reading(u) / reading(x)',
    ),
    result: output(convertedField, 'y = x · (2π·f)^n · k'),
  },
  holds:
    'a single sine at the frequency given; a mere change of unit, and the derived peak of an r.m.s., hold for any waveform',
  sources: [
    clause(iso2041, 'peak, peak-to-peak and r.m.s. of a sine'),
    clause(iso80000x3, 'standard acceleration of free fall'),
    clause(iso1683, 'reference values'),
  ],
  evaluate: ({ from, frequency, to }) => {
    const differentiations = motionOrder[to.quantity] - motionOrder[from.quantity];
    if (differentiations !== 0 && frequency === undefined) {
      throw new Refusal({
        read: '',
        expected: `'frequency': ${from.quantity} becomes ${to.quantity} only at a stated frequency; for example frequency="25 Hz"`,
      });
    }
    if (frequency !== undefined && !(frequency > 0)) {
      throw new Refusal({ read: `frequency=${showNumber(frequency)} Hz`, expected: 'a frequency above zero' });
    }
    if (from.value === 0 && to.reference !== undefined) {
      throw new Refusal({ read: 'from=0', expected: 'a level above zero: nothing has no level in decibels' });
    }
    return {
      differentiations,
      detectorRatio: sineFactor[to.detector] / sineFactor[from.detector],
      result: convertedLevel(from, to, frequency),
    };
  },
  doubts: ({ from, frequency, to }) => bandDoubts(from, frequency, to),
  example: { from: '4.5 mm/s rms', frequency: '25 Hz', to: 'um pp' },
});

function bandDoubts(from: Level<Motion>, frequency: number | undefined, to: MotionWriting): readonly Finding[] {
  if (from.band === undefined || holdsForAnyWaveform(from, to)) return [];
  const outside = frequency !== undefined && (frequency < from.band.low || frequency > from.band.high);
  return [
    {
      rule: 'signal/band-level-as-sine',
      weight: 'warns',
      at: 'vibration-conversion',
      found: `a level over ${showNumber(from.band.low)}..${showNumber(from.band.high)} Hz, taken as one sine${
        frequency === undefined ? '' : ` at ${showQuantity('frequency', frequency)}`
      }`,
      limit: outside ? 'the frequency lies outside that band' : 'one sine that holds all of it',
      because: 'A level over a band holds every frequency in it; each of them converts by another factor.',
      remedy: ['convert the amplitude of the one line meant', 'integrate or differentiate the record itself'],
      sources: [],
    },
  ];
}
