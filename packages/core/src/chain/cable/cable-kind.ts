import type { Answer, Fields, Sheet } from '../../quantity/index.ts';
import type { PartKind } from '../part-kind.ts';
import type { Port, Stage } from '../stage.ts';

/** A length of cable in a chain. */
export interface CableModel {
  readonly of: string;
  readonly length: Answer<number>;
  readonly capacitance: Answer<number>;
  /** Of both cores, there and back. */
  readonly loopResistance: Answer<number>;
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
