import type { AnyWorking } from '../../working/index.ts';
import { driverCableWorking } from './driver-cable.ts';
import { gapShiftWorking } from './gap-shift.ts';
import { notchPulseWorking } from './notch-pulse.ts';
import { shaftAbsoluteWorking } from './shaft-absolute.ts';
import { thrustPositionsWorking } from './thrust-positions.ts';
import { vectorSubtraction } from './vector-subtraction.ts';

export type { ArrangementKind, ProbeRow, ProbeSurroundings, ProbeSystem } from './arrangement/arrangement-kind.ts';
export * from './arrangement/kinds.ts';
export { allowedRunout, compensatedVector, slowRollAccepted } from './arrangement/slow-roll.ts';
export * from './driver-cable.ts';
export * from './gap-shift.ts';
export * from './notch-pulse.ts';
export * from './shaft-absolute.ts';
export * from './thrust-positions.ts';
export * from './vector-subtraction.ts';
export * from './vectors.ts';

/** The formulas about probes on shafts. */
export const proximityWorkings: readonly AnyWorking[] = [
  gapShiftWorking,
  thrustPositionsWorking,
  notchPulseWorking,
  vectorSubtraction,
  shaftAbsoluteWorking,
  driverCableWorking,
];
