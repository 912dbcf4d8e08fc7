import { cableRuns } from '../../chain/cable-runs.ts';
import { finding } from '../../finding/finding.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/cable-ends';
const remedy = ['name the part the cable leads on from', 'take the cable out'];

export const cableHasTwoEnds = completenessRule({
  id,
  title: 'Every cable has two ends',
  prose:
    'A length of cable that leads on from a place the line does not have is in no drawing and in no calculation, and yet ' +
    'somebody meant it to be laid.',
  remedy,
  sources: [],
  findings: ({ machines }) =>
    machines
      .flatMap((machine) => machine.points)
      .flatMap(({ point, appraisal }) =>
        (appraisal === undefined ? [] : cableRuns(appraisal.prediction.chain))
          .filter((run) => run.to === undefined || run.model === undefined)
          .map((run) =>
            finding({
              rule: id,
              weight: 'blocks-issue',
              at: point.of,
              found: `cable ${run.number}, ${run.cable.name}, leads on from ${run.from} to nowhere`,
              limit: 'a part at each end',
              because: 'It was counted in no resistance and no capacitance, and nobody could connect it.',
              remedy,
              sources: [],
            }),
          ),
      ),
});
