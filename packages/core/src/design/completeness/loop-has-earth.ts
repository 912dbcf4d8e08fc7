import { finding } from '../../finding/finding.ts';
import { earthPlaces } from '../../wiring/earth-places.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/loop-earth';
const remedy = ['say where the loop is earthed', 'say that it floats, and why, in the remark on its wiring'];

export const loopHasEarth = completenessRule({
  id,
  title: 'Every loop that stays has an earth',
  prose:
    'A loop whose return is joined to earth nowhere picks up whatever stands near it. One that floats on purpose is asked ' +
    'about, so that somebody says so; a chain that is carried to the machine floats and is left alone.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal, stated: { wiring } }) => {
        if (appraisal === undefined || point.installation !== 'online') return [];
        const places = earthPlaces({
          point,
          chain: appraisal.prediction.chain,
          ...(wiring === undefined ? {} : { wiring }),
        });
        if (places.signal.length > 0 || places.unknown.length > 0 || wiring?.values.remark?.known === true) return [];
        return [
          finding({
            rule: id,
            weight: 'question',
            at: point.of,
            found: 'its return is joined to earth nowhere',
            limit: 'one earth',
            because: 'A loop that floats picks up what stands near it, and nobody said that it shall.',
            remedy,
            sources: [],
            asks: 'Where is this loop earthed?',
          }),
        ];
      }),
});
