import type { Reference } from '../../demand/target.ts';
import {
  type Answer,
  aboveZeroField,
  choiceField,
  countField,
  type Fields,
  flagField,
  type Level,
  type Motion,
  notBelowZeroField,
  optional,
  quantityField,
  type Sheet,
  type Span,
  spanField,
  textField,
  toleranceField,
} from '../../quantity/index.ts';
import { apparatusCertificateSheet } from '../certificate.ts';
import { filterOrderField } from '../filter-order-field.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { PartKind } from '../part-kind.ts';
import { sealingField } from '../sealing.ts';
import type { Stage } from '../stage.ts';
import type { TransducerNeeds } from './needs.ts';

/** How a transducer is fed and what its signal travels on; an input says which of these it takes. */
export const feeds = [
  'constant-current',
  'self-generating',
  'negative-supply',
  'voltage-supply',
  'current-loop',
] as const;
export type Feed = (typeof feeds)[number];

/**
 * A peak that may not be passed, and where: in the motion given, after the gain given (relative to the nominal
 * sensitivity, from the measured surface up to the place of the limit).
 */
export interface Ceiling {
  readonly name: string;
  readonly part: string;
  readonly motion: Motion;
  readonly peak: number;
  gain(frequency: number): number;
}

/** What a detecting sensor sends: one number that stands for the motion. */
export interface OneNumber {
  /** The level at full scale; its detector is the sensor's. */
  readonly range: Answer<Level<Motion>>;
  /** Error of the zero, as a fraction of the range. */
  readonly zeroError: Answer<number>;
  /** Least voltage across its terminals. */
  readonly minimumVoltage: Answer<number>;
}

/** The electronics a constant-current supply feeds. */
export interface BiasedOutput {
  readonly bias: Answer<Span<'voltage'>>;
  readonly saturation: Answer<number>;
  readonly ownCurrent: Answer<number>;
  readonly supplyCurrent: Answer<Span<'current'>>;
}

/** A transducer on its mount, ready to stand in a chain. */
export interface TransducerModel extends TransducerNeeds {
  readonly senses: Motion;
  readonly reference: Reference;
  readonly feed: Feed;
  readonly signal: 'dynamic' | 'overall';
  /** Output per motion, SI, well inside the band. */
  readonly sensitivity: Answer<number>;
  readonly stages: Answer<readonly Stage[]>;
  /** Highest frequency its data sheet speaks of, where it sets one. */
  readonly usableTo: Answer<number> | undefined;
  readonly ceilings: readonly Answer<Ceiling>[];
  readonly biased: BiasedOutput | undefined;
  readonly oneNumber: OneNumber | undefined;
  readonly mountedResonance: Answer<number> | undefined;
  readonly settling: Answer<number> | undefined;
  /** The other output of a device that has two, for an input that takes that one. */
  readonly otherOutput?: TransducerModel;
  /** What the model leaves out or takes for granted, in plain words. */
  readonly assumptions: readonly string[];
}

/** Fields every transducer has, whatever it senses. */
export const commonTransducerSheet = {
  temperature: spanField('temperature', 'Surface it may stand on', { example: '-50..120 °C' }),
  connectorTemperature: optional(
    spanField('temperature', 'Surroundings its connector may be in', { example: '-40..90 °C' }),
  ),
  sensitivityTolerance: toleranceField('Deviation of one piece from the nominal sensitivity', { example: '±10 %' }),
  sealing: sealingField('Sealing as offered, with its state: mated, moulded, hermetic'),
  caseIsolated: flagField('Whether the case is isolated from the signal'),
  mass: optional(aboveZeroField(quantityField('mass', 'Mass of the transducer', { example: '95 g' }))),
  temperatureCoefficient: optional(
    quantityField('per temperature', 'Change of sensitivity with temperature', { example: '0.06 %/K' }),
  ),
  transverse: optional(
    notBelowZeroField(quantityField('fraction', 'Largest transverse sensitivity', { example: '5 %' })),
  ),
  settling: optional(quantityField('time', 'Time to settle after power comes on', { example: '3 s' })),
  ...apparatusCertificateSheet,
  remark: optional(textField('What else a reader should know')),
  costRank: optional(countField('Order of cost within a catalogue, 1 the cheapest')),
} as const;

/** A shape of roll-off: corner and order of a Butterworth section. */
export const lowCornerSheet = {
  lowCorner: aboveZeroField(quantityField('frequency', 'Lower corner, −3 dB', { symbol: 'f_l', example: '0.5 Hz' })),
  lowCornerOrder: filterOrderField('Order of the lower corner'),
} as const;

export const optionalHighCornerSheet = {
  highCorner: optional(
    aboveZeroField(quantityField('frequency', 'Upper corner of the electronics, −3 dB', { example: '5000 Hz' })),
  ),
  highCornerOrder: optional(filterOrderField('Order of the upper corner')),
} as const;

/** Of a transducer whose supply has a core of its own. */
export const supplyDrawSheet = {
  supplyDraw: optional(
    notBelowZeroField(quantityField('current', 'Current it draws through its supply core', { example: '12 mA' })),
  ),
} as const;

export const feedField = choiceField(feeds, 'How it is fed');

/** A kind of transducer: one file, one line in `kinds.ts`. */
export interface TransducerKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  readonly senses: Motion | 'stated';
  model(sheet: Sheet<F>, mount: MountModel): TransducerModel;
}

export function transducerKind<const Kind extends string, F extends Fields>(
  definition: TransducerKind<Kind, F>,
): TransducerKind<Kind, F> {
  return definition;
}
