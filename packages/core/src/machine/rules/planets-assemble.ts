import { showFraction, valueIfStated } from '../../quantity/index.ts';
import { planetaryKinematics } from '../../source/planetary-kinematics.ts';
import { clause } from '../../source/source.ts';
import { assemblyShare } from '../planetary-frequencies.ts';
import type { PlanetaryStageSheet } from '../planetary-stage.ts';
import { planetaryTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const planetsAssemble = machineRule<[PlanetaryStageSheet]>({
  id: 'machine/planets-assemble',
  title: 'Planets at equal angles can be put in',
  prose:
    'Planets at equal angles go in only where sun and ring teeth together are a whole multiple of their number. Otherwise a count is wrong or the angles are unequal, and then nothing is said here of how the meshes add at the ring.',
  sources: [clause(planetaryKinematics, '(z_s + z_r) a multiple of N', 'second-hand')],
  finds(sheet) {
    const sun = valueIfStated(sheet.values.sunTeeth);
    const ring = valueIfStated(sheet.values.ringTeeth);
    const planets = valueIfStated(sheet.values.planets);
    if (sun === undefined || ring === undefined || planets === undefined) return [];
    if (valueIfStated(sheet.values.spacing) === 'unequal') return [];
    const share = assemblyShare({ sun, ring, planet: 1, planets });
    if (share.denominator === 1n) return [];
    const others = [3, 4, 5, 6, 7].filter((count) => (sun + ring) % count === 0);
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: `(${sun} + ${ring})/${planets} = ${showFraction(share)}`,
        limit: 'a whole number for planets at equal angles',
        because: 'Planet pass, sun and ring faults are multiples of the number of planets.',
        remedy: [
          'count the planets and the teeth',
          ...(others.length === 0 ? [] : [`${others.join(', ')} planets would go in`]),
          'state the spacing as unequal, if the drawing says so',
        ],
        asks: 'Is a count wrong, or do the planets stand at unequal angles?',
      },
    ];
  },
  valid: planetaryTrain({}),
  invalid: planetaryTrain({ planets: 7 }),
});
