import { finding } from '../../finding/finding.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/transducer-target';
const remedy = ['state what the point must show', 'leave the point out'];

export const transducerHasTarget = completenessRule({
  id,
  title: 'Every transducer is there for something',
  prose: 'A chain at a point without a target was judged against nothing: whatever it does would pass.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal }) =>
        appraisal === undefined || point.targets.length > 0
          ? []
          : [
              finding({
                rule: id,
                weight: 'blocks-issue',
                at: point.of,
                found: `${appraisal.prediction.chain.parts.transducer.name} is chosen and no target is stated`,
                limit: 'a target for each transducer',
                because: 'Nothing proves a chain that nothing is asked of.',
                remedy,
                sources: [],
              }),
            ],
      ),
});
