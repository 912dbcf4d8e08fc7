import type { Answer, Fields, Sheet } from '../../quantity/index.ts';
import type { PartKind } from '../part-kind.ts';
import type { Port, Stage } from '../stage.ts';

/** Values per length of the pair, as a comparison of certificates wants them. */
export interface DeclaredCable {
  readonly capacitancePerLength: Answer<number>;
  readonly inductancePerLength: Answer<number>;
  /** There and back. */
  readonly resistancePerLength: Answer<number>;
  /** Where the declaration stands, and how it is known. */
  readonly from: string;
}

/** A length of cable in a chain. */
export interface CableModel {
  readonly of: string;
  readonly length: Answer<number>;
  readonly capacitance: Answer<number>;
  /** Of both cores, there and back. */
  readonly loopResistance: Answer<number>;
  /** What its maker declares for intrinsic safety, per length; absent where nothing is declared. */
  readonly declared: DeclaredCable | undefined;
  /** What it does to the signal that travels on it. */
  stages(port: Port): Answer<readonly Stage[]>;
}

/** A kind of cable: one file, one line in `kinds.ts`. */
export interface CableKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  model(sheet: Sheet<F>, length: Answer<number>): CableModel;
}

export function cableKind<const Kind extends string, F extends Fields>(
  definition: CableKind<Kind, F>,
): CableKind<Kind, F> {
  return definition;
}
