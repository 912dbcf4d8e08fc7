import type { MachineElement, MachineElementKindName } from '../../machine/kinds.ts';
import type { Answer, Level, Motion } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { CourseTerm } from '../course.ts';
import type { Mode, MotionPart } from '../part/part.ts';

/** Where a fault sits, and what of the machine it needs to know there. */
export interface FaultPlace {
  readonly at: string;
  /** The element; none where it sits on a shaft. */
  readonly element: MachineElement | undefined;
  /** A line of this place by its name there: `outer-ring`, and so many times it. */
  line(name: string, times?: number): Answer<readonly CourseTerm[]>;
  /** One turn of the shaft in a role of the element, or of the shaft itself; nothing where that role stands still. */
  turn(role?: string): Answer<readonly CourseTerm[]> | undefined;
  /** What a blow sets ringing at the measuring point. */
  readonly modes: readonly Mode[];
  /** What was taken for granted of those modes. */
  readonly modesAssumed: readonly string[];
}

export interface FaultSize {
  readonly size: Level<Motion>;
  readonly phase?: number;
}

/** A fault of a machine that a rehearsal can put in: one file, one line in `kinds.ts`. */
export interface FaultKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly name: string;
  /** Where it may sit: on a shaft, or at elements of these kinds. */
  readonly at: 'shaft' | readonly MachineElementKindName[];
  /** What its size is: `rms of once per turn`. */
  readonly sized: string;
  readonly example: string;
  readonly sources: readonly Clause[];
  parts(fault: FaultSize, place: FaultPlace): Answer<readonly MotionPart[]>;
}

export function faultKind<const Kind extends string>(definition: FaultKind<Kind>): FaultKind<Kind> {
  return definition;
}
