import type { cableKinds, inputKinds, mountKinds, supplyKinds, transducerKinds } from '@soundpost/core';

type AnyPartKind =
  | (typeof transducerKinds)[number]
  | (typeof mountKinds)[number]
  | (typeof cableKinds)[number]
  | (typeof supplyKinds)[number]
  | (typeof inputKinds)[number];

/** Every kind of part a chain may have. */
export type PartKindName = AnyPartKind['kind'];

/** Fields of its own sheet for each kind: one that is missing, or a field no sheet has, does not compile. */
type KeysByKind = {
  readonly [K in AnyPartKind as K['kind']]: readonly (keyof K['dataSheet'] & string)[];
};

/** The fields of a data sheet that a drawing of the chain writes beside a part: what decides most about the signal. */
const keys: KeysByKind = {
  'iepe-accelerometer': ['sensitivity', 'range', 'lowCorner', 'mountedResonance', 'bias'],
  'charge-accelerometer': ['elementSensitivity', 'range', 'feedbackCapacitance', 'mountedResonance', 'bias'],
  'capacitive-dc': ['sensitivity', 'range', 'highCorner', 'mountedResonance'],
  'piezo-velocity': ['sensitivity', 'range', 'lowCorner', 'mountedResonance', 'bias'],
  'moving-coil': ['sensitivity', 'suspension', 'usableTo', 'travel'],
  'low-frequency-velocity': ['sensitivity', 'range', 'lowCorner', 'usableTo'],
  'proximity-system': ['sensitivity', 'linearRange', 'highCorner'],
  lvdt: ['sensitivity', 'stroke', 'highCorner'],
  'shaft-rider': ['sensitivity', 'suspension', 'usableTo', 'travel'],
  'loop-sensor': ['range', 'lowCorner', 'highCorner', 'minimumVoltage'],
  'dual-output': ['range', 'minimumVoltage', 'rawSensitivity', 'rawRange'],
  stud: ['addedMass'],
  'adhesive-pad': ['stiffness', 'addedMass'],
  'quick-lock': ['stiffness', 'addedMass'],
  'flat-magnet': ['stiffness', 'addedMass'],
  'two-pole-magnet': ['stiffness', 'addedMass'],
  'hand-probe': ['stiffness', 'addedMass'],
  'isolating-stud': ['stiffness', 'addedMass'],
  'signal-cable': ['capacitancePerLength', 'resistancePerLength'],
  'loop-supply': ['voltage'],
  'series-resistance': ['resistance'],
  'shunt-diode-barrier': ['resistance', 'workingVoltage'],
  'galvanic-isolator-iepe': ['fieldVoltage', 'fieldCurrent', 'bandwidth'],
  'galvanic-isolator-loop': ['fieldVoltage'],
  'junction-box': ['terminals'],
  'constant-current-input': ['compliance', 'current', 'rangePeak', 'couplingCorner', 'bits'],
  'direct-voltage-input': ['rangePeak', 'bits'],
  'current-card': ['resistance', 'countsAtLow', 'countsAtHigh'],
};

export function keyFields(kind: PartKindName): readonly string[] {
  return keys[kind];
}
