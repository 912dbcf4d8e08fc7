import type { Judgement } from '../../chain/rules/rule.ts';
import { inWords } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { cableFaults, multicoreSource } from '../multicore.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/multicore';

export const multicore = areaRule({
  id,
  title: 'The circuits of one cable stay apart',
  prose:
    'In a cable of type A or B each circuit is compared by itself. In any other, cores of several circuits may touch, and ' +
    'the comparison must be made of them together.',
  remedy: ['a cable of its own', 'a multicore of type A or B', 'a proof of all circuits of the cable together'],
  sources: [multicoreSource],
  judge: ({ area }) => {
    const kind = valueIfStated(area.values.cableNeighbours);
    if (kind === undefined) return [];
    const { meaning, apart } = cableFaults(kind);
    const judgement: Judgement = {
      rule: id,
      outcome: apart ? 'meets' : 'cannot tell',
      what: 'cable:',
      found: inWords(`${kind}, ${meaning}`),
      limit: inWords('own cable, type A or type B'),
      ...(apart
        ? {}
        : {
            missing: [{ of: area.of, what: 'proof of all circuits of the cable together' }],
            needs: 'the faults between circuits in the proof',
          }),
    };
    return [judgement];
  },
});
