import type { Stage } from '../../chain/stage.ts';
import type { QuantityName } from '../../quantity/index.ts';
import type { Random } from '../../uncertainty/random.ts';

/** What is known while a defect works on samples. */
export interface DefectContext {
  readonly rate: number;
  /** Samples before the record. */
  readonly lead: number;
  /** Turns of the reference shaft at each sample. */
  readonly turns: Float64Array;
  /** Lower corner of the transducer, in hertz; 0 where it passes direct voltage. */
  readonly lowerCorner: number;
  /** V per SI unit of what is sensed. */
  readonly sensitivity: number;
  readonly random: Random;
}

/** What a defect changes of a chain; what it leaves out stays as designed. */
export interface ChainChange {
  /** Direct voltage found at the input terminal instead. */
  readonly rest?: number;
  /** Direct voltage the electronics stand at instead, about which they swing. */
  readonly bias?: number;
  /** Nothing of the motion comes through. */
  readonly dead?: true;
  readonly stages?: (stages: readonly Stage[]) => readonly Stage[];
  /** Works on the motion at the surface, in place. */
  readonly atSurface?: (samples: Float64Array, context: DefectContext) => void;
  /** Works on the volts inside the transducer, before its swing, in place. */
  readonly atSource?: (samples: Float64Array, context: DefectContext) => void;
  /** Works on the volts at the input terminal, in place. */
  readonly atTerminal?: (samples: Float64Array, context: DefectContext) => void;
  /** Volts recorded over volts there. */
  readonly gain?: number;
  /** Motion shown over the volts by the nominal sensitivity. */
  readonly scale?: number;
  /** Noise over the predicted. */
  readonly noise?: number;
  /** Slew over that of the cable as designed. */
  readonly slew?: number;
  /** Farads added to what the current must drive. */
  readonly moreCapacitance?: number;
  readonly withoutFilter?: true;
  /** Upper end of a loop, in amperes. */
  readonly loopTop?: number;
}

/** A defect of an installed chain: one file, one line in `kinds.ts`. */
export interface DefectKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly name: string;
  /** What its size is, its quantity, and the usual one in SI. */
  readonly sized: string;
  readonly quantity: QuantityName;
  readonly usual: number;
  change(size: number): ChainChange;
}

export function defectKind<const Kind extends string>(definition: DefectKind<Kind>): DefectKind<Kind> {
  return definition;
}

/** A defect at a size in SI; at its usual one where left out. */
export interface DefectStatement {
  readonly kind: string;
  readonly size?: number;
}
