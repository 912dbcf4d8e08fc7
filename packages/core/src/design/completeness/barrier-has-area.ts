import { finding } from '../../finding/finding.ts';
import type { Sheet } from '../../quantity/index.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/barrier-area';
const remedy = ['state the area from its classification drawing', 'take the barrier or isolator out of the loop'];

export const barrierHasArea = completenessRule({
  id,
  title: 'Every certified barrier or isolator serves an area that is stated',
  prose:
    'Somebody put a certified barrier or isolator into the loop for a reason. Where no hazardous area is stated nothing is ' +
    'compared, and the loop reads as one that needs no comparison.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal }) => {
        if (appraisal === undefined || point.area !== undefined) return [];
        const certified = appraisal.prediction.chain.parts.inLine.filter(({ sheet }) => {
          const marking = (sheet as Sheet).values.certificateMarking as { readonly known?: boolean } | undefined;
          return marking?.known === true;
        });
        return certified.slice(0, 1).map(({ name }) =>
          finding({
            rule: id,
            weight: 'question',
            at: point.of,
            found: `${name} carries a certificate for hazardous areas, and no area is stated`,
            limit: 'a stated area',
            because: 'Without an area nothing is compared, whatever stands on the certificates.',
            remedy,
            sources: [],
            asks: 'In which hazardous area does this point stand? Its classification drawing says; if in none, why the barrier?',
          }),
        );
      }),
});
