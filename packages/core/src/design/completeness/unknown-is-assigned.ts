import { finding } from '../../finding/finding.ts';
import { questions } from '../questions.ts';
import { completenessRule } from './rule.ts';

const id = 'completeness/unknown-assigned';
const remedy = ['state the value', 'state it as unknown, with who is to be asked'];

export const unknownIsAssigned = completenessRule({
  id,
  title: 'Every unknown has somebody who is asked',
  prose:
    'What is not known and is nobody’s to find out stays unknown until the day it is needed. Only what a judgement waits ' +
    'for is looked at.',
  remedy,
  sources: [],
  findings: (design) =>
    questions(design)
      .filter((each) => each.ask === undefined && each.judgements > 0)
      .map((each) =>
        finding({
          rule: id,
          weight: 'question',
          at: each.points[0] ?? each.of,
          found: `${each.what} of ${each.of} is not known, and nobody is named who could tell`,
          limit: 'somebody to ask for each unknown',
          because: `${each.judgements} ${each.judgements === 1 ? 'judgement waits' : 'judgements wait'} for it.`,
          remedy,
          sources: [],
          asks: `Who can tell the ${each.what} of ${each.of}?`,
        }),
      ),
});
