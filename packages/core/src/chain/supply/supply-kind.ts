import type { Answer, Fields, Sheet, Span, Tolerance } from '../../quantity/index.ts';
import type { ApparatusCertificate, AssociatedCertificate } from '../certificate.ts';
import type { ConstantCurrent } from '../input/input-kind.ts';
import type { PartKind } from '../part-kind.ts';
import type { Port, Stage } from '../stage.ts';
import type { Feed } from '../transducer/transducer-kind.ts';

/** What stands in the line between transducer and input: a supply, an indicator, a box, a barrier, an isolator. */
export interface SupplyModel {
  readonly of: string;
  /** Voltage that drives a loop from here, over its tolerance. */
  readonly voltage: Answer<Span<'voltage'>> | undefined;
  /** Resistance it puts in the line, at its highest. */
  readonly resistance: Answer<number> | undefined;
  /** That resistance in the usual piece, where it is less than the highest. */
  readonly usualResistance?: Answer<number>;
  /** What it does to the signal beyond its resistance. */
  stages?(port: Port): Answer<readonly Stage[]>;
  /** Where the line is galvanically cut: what is fed before it, and what stands behind it. */
  readonly isolation?: Isolation;
  /** Of what is fed at terminals of its own, beside the line. */
  readonly ownSupply?: Answer<Span<'voltage'>>;
  /** Resistance its second channel puts in a supply core that passes through it. */
  readonly supplyResistance?: Answer<number>;
  /** Where it connects the line to earth: up to which voltage it carries the signal unharmed. */
  readonly earthed?: { readonly workingVoltage: Answer<number> };
  /** Where it limits the energy of what stands before it, and is certified to. */
  readonly associated?: AssociatedCertificate;
  /** Where it may stand in a hazardous area itself. */
  readonly apparatus?: ApparatusCertificate | undefined;
  /** Where it joins two lengths of cable and no more. */
  readonly joins?: true;
}

/** A galvanic isolator seen from both of its sides. */
export interface Isolation {
  /** How a transducer before it may be fed. */
  readonly takes: readonly Feed[];
  /** As what it stands before the input. */
  readonly gives: Answer<Feed>;
  /** What it feeds a constant-current transducer with, in place of the input. */
  readonly constantCurrent?: ConstantCurrent;
  /** Output over input, well inside its band. */
  readonly gain: Answer<number>;
  readonly gainTolerance: Answer<Tolerance> | undefined;
  /** Direct voltage at its output while nothing moves. */
  readonly restVoltage: Answer<Span<'voltage'>> | undefined;
  /** Largest voltage it passes on, either way, at its field terminals. */
  readonly peakVoltage: Answer<number> | undefined;
}

/** A kind of supply or series element: one file, one line in `kinds.ts`. */
export interface SupplyKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  model(sheet: Sheet<F>): SupplyModel;
}

export function supplyKind<const Kind extends string, F extends Fields>(
  definition: SupplyKind<Kind, F>,
): SupplyKind<Kind, F> {
  return definition;
}
