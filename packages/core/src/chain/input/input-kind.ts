import type { Answer, Fields, Missing, Sheet, Span } from '../../quantity/index.ts';
import type { PartKind } from '../part-kind.ts';
import type { Stage } from '../stage.ts';
import type { Feed } from '../transducer/transducer-kind.ts';

/** A constant-current source: what it can drive, and up to where. */
export interface ConstantCurrent {
  readonly compliance: Answer<number>;
  /** Voltage of the supply behind it at the top of its tolerance. */
  readonly highest: Answer<number>;
  readonly current: Answer<number>;
  /** Voltage the source itself needs. */
  readonly drop: Answer<number>;
}

/** A card that reads a loop. */
export interface LoopCard {
  readonly resistance: Answer<number>;
  readonly currentAtLow: Answer<number>;
  readonly currentAtHigh: Answer<number>;
  readonly countsAtLow: Answer<number>;
  readonly countsAtHigh: Answer<number>;
}

export interface InputModel {
  readonly of: string;
  readonly takes: readonly Feed[];
  /** What it may take as well, and what must be known to tell. */
  readonly perhaps: { readonly takes: readonly Feed[]; readonly missing: readonly Missing[] } | undefined;
  readonly stages: Answer<readonly Stage[]>;
  /** Largest voltage it digitises, either way. */
  readonly peakVoltage: Answer<number> | undefined;
  /** Bits over that range, both ways. */
  readonly bits?: Answer<number>;
  readonly constantCurrent: ConstantCurrent | undefined;
  readonly loopCard: LoopCard | undefined;
  /** Of its whole span of current, half-width. */
  readonly cardAccuracy?: Answer<number>;
  readonly samplingTo: Answer<number> | undefined;
  /** Voltage between the supply core and common at its terminals, without its sign. */
  readonly supplyVoltage?: Answer<Span<'voltage'>>;
}

/** A kind of input: one file, one line in `kinds.ts`. */
export interface InputKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  model(sheet: Sheet<F>): InputModel;
}

export function inputKind<const Kind extends string, F extends Fields>(
  definition: InputKind<Kind, F>,
): InputKind<Kind, F> {
  return definition;
}
