import { valueIfStated } from '../../quantity/index.ts';
import { gearFrequencies } from '../../source/gear-frequencies.ts';
import { clause } from '../../source/source.ts';
import type { RoleSpeeds } from '../element.ts';
import type { GearPairSheet } from '../gear-pair.ts';
import { toothPair } from '../mesh-frequencies.ts';
import { gearTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const commonFactor = machineRule<[GearPairSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/common-factor',
  title: 'Tooth counts with a common factor are noticed',
  prose:
    'With a common factor the same teeth meet more often, wear shows in groups of teeth, and the hunting-tooth frequency is that factor higher.',
  sources: [clause(gearFrequencies)],
  finds(sheet) {
    const z1 = valueIfStated(sheet.values.drivingTeeth);
    const z2 = valueIfStated(sheet.values.drivenTeeth);
    if (z1 === undefined || z2 === undefined) return [];
    const { phases } = toothPair(z1, z2);
    if (phases === 1) return [];
    return [
      {
        weight: 'notes',
        at: sheet.of,
        found: `${z1} and ${z2} teeth share the factor ${phases}`,
        limit: '',
        because: `Each tooth meets only ${z2 / phases} of the ${z2} teeth opposite; the same pair meets ${phases} times as often as without the factor.`,
        remedy: ['look at the assembly-phase line beside the mesh'],
      },
    ];
  },
  valid: gearTrain({}),
  invalid: gearTrain({ 'driving-teeth': 24 }),
});
