import { bareNumber, said } from '../../finding/measure.ts';
import { type Sheet, type Stated, valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { type LoopFields, shortestLoop } from '../toothed-loop.ts';
import { linkedTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

const chain = (links: number) => linkedTrain({ kind: 'chain-drive', 'driving-teeth': 19, 'driven-teeth': 57, links });

export const toothedLoopPossible = machineRule<[Sheet<LoopFields>, Stated<number>, string]>({
  id: 'machine/toothed-loop-possible',
  title: 'A chain or timing belt is long enough to go round both wheels',
  prose:
    'A loop shorter than half of each wheel and the distance at which they just miss each other cannot be put on. The count was read of another part, or in another unit than pitches.',
  sources: [clause(tradePractice, 'chains and timing belts')],
  finds(sheet, stated, what) {
    const driving = valueIfStated(sheet.values.drivingTeeth);
    const driven = valueIfStated(sheet.values.drivenTeeth);
    const loop = valueIfStated(stated);
    if (driving === undefined || driven === undefined || loop === undefined) return [];
    const shortest = shortestLoop(driving, driven);
    if (loop >= shortest) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: `${loop} ${what} round wheels of ${driving} and ${driven} teeth`,
        limit: said`more than ${bareNumber(shortest, 3)}`,
        because: 'One turn of the loop, and the repeat of one tooth in one link, follow from its length.',
        remedy: [`count the ${what} again`],
        asks: `How many ${what} are there?`,
      },
    ];
  },
  valid: chain(120),
  invalid: chain(60),
});
