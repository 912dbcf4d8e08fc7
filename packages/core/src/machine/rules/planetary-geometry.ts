import { valueIfStated } from '../../quantity/index.ts';
import { planetaryKinematics } from '../../source/planetary-kinematics.ts';
import { clause } from '../../source/source.ts';
import { ringThatFits } from '../planetary-frequencies.ts';
import type { PlanetaryStageSheet } from '../planetary-stage.ts';
import { planetaryTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

/** Teeth by which profile shift may part a ring from sun plus two planets. Common practice, no source. */
const mostByShift = 3;

export const planetaryGeometry = machineRule<[PlanetaryStageSheet]>({
  id: 'machine/planetary-geometry',
  title: 'Sun, planets and ring of a planetary stage fit into each other',
  prose:
    'Without profile shift the ring has as many teeth as the sun and two planets. A tooth or three may be bridged by profile shift, and then somebody knows it; else a count is wrong, and with it every speed of the stage.',
  sources: [clause(planetaryKinematics, 'z_r = z_s + 2·z_p')],
  finds(sheet) {
    const sun = valueIfStated(sheet.values.sunTeeth);
    const planet = valueIfStated(sheet.values.planetTeeth);
    const ring = valueIfStated(sheet.values.ringTeeth);
    if (sun === undefined || planet === undefined || ring === undefined) return [];
    const fits = ringThatFits({ sun, planet, ring, planets: 1 });
    const apart = Math.abs(fits - ring);
    if (apart === 0) return [];
    const byShift = apart <= mostByShift;
    if (byShift && valueIfStated(sheet.values.profileShift) === true) return [];
    const planetThatFits = (ring - sun) / 2;
    return [
      {
        weight: 'blocks-issue',
        at: sheet.of,
        found: `${sun} + 2·${planet} = ${fits} teeth, and a ring of ${ring}`,
        limit: `a ring of ${fits}`,
        because: 'Wheels that do not fit have no speeds; one of the three counts is wrong.',
        remedy: [
          ...(planetThatFits > 1 && Number.isInteger(planetThatFits)
            ? [`count the planet again: ${planetThatFits} teeth would fit`]
            : ['count the teeth again']),
          ...(byShift ? ['state that the wheels have profile shift, if the drawing says so'] : []),
        ],
        asks: byShift
          ? 'Which count is wrong, or have the wheels profile shift?'
          : 'Which of the three counts is wrong?',
      },
    ];
  },
  valid: planetaryTrain({}),
  invalid: planetaryTrain({ 'planet-teeth': 38 }),
});
