import { type Finding, inOrderOfWeight } from '../../finding/finding.ts';
import type { Design } from '../design.ts';
import { alarmHasLoop } from './alarm-has-loop.ts';
import { barrierHasArea } from './barrier-has-area.ts';
import { cableHasCores } from './cable-has-cores.ts';
import { cableHasTwoEnds } from './cable-has-two-ends.ts';
import { loopHasEarth } from './loop-has-earth.ts';
import type { CompletenessRule } from './rule.ts';
import { supplyHasVoltage } from './supply-has-voltage.ts';
import { tagNamesOneThing } from './tag-names-one-thing.ts';
import { transducerHasTarget } from './transducer-has-target.ts';
import { unknownIsAssigned } from './unknown-is-assigned.ts';

/** What is looked at before a design is issued. */
export const completenessRules: readonly CompletenessRule[] = [
  tagNamesOneThing,
  cableHasTwoEnds,
  cableHasCores,
  transducerHasTarget,
  alarmHasLoop,
  loopHasEarth,
  barrierHasArea,
  supplyHasVoltage,
  unknownIsAssigned,
];

/** What a design lacks before it may leave the office, gravest first; it says nothing of whether the design is good. */
export function completenessFindings(design: Design): readonly Finding[] {
  return inOrderOfWeight(completenessRules.flatMap((rule) => rule.findings(design)));
}
