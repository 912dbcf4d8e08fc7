import { measured } from '../../finding/measure.ts';
import { type Answer, answer, answerOf, fromAll, type Sheet, type Stated, unanswered } from '../../quantity/index.ts';
import { iec60529 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Sealing } from '../sealing.ts';
import { type Judgement, judged, rule } from './rule.ts';

const id = 'chain/immersion-depth';

/** What the test under water of IPx7 was made at, metres. */
const depthOfSeven = 1;

export const immersionDepth = rule({
  id,
  title: 'It was tested as deep as it gets',
  prose:
    'IPx7 is one metre for half an hour; IPx8 is whatever maker and user agreed, and without that depth and time it says ' +
    'little. A pit that fills up is deeper than it looks.',
  remedy: ['the depth and time of the test, from its maker', 'a transducer tested deeper', 'keep the pit dry'],
  sources: [clause(iec60529, 'IPX7 1 m for 30 min, IPX8 as agreed')],
  judge: ({ point, prediction }) => {
    const stated = point.surroundings.values.immersionDepth;
    if (stated === undefined) return [];
    const { sheet } = prediction.chain.parts.transducer;
    const offered = answerOf((sheet as Sheet).values.sealing as Stated<Sealing> | undefined, sheet.of, 'sealing');
    const what = 'depth under water';
    if (offered.known && offered.value.state === 'hermetic') return [];
    return judged(
      fromAll(
        {
          tested: offered.known ? testedDepth(offered.value, sheet.of) : offered,
          depth: answerOf<number>(stated, point.of, 'immersion depth'),
        },
        (known) => known,
      ),
      { rule: id, what },
      ({ tested, depth }): readonly Judgement[] => [
        {
          rule: id,
          outcome: depth <= tested ? 'meets' : 'fails',
          what,
          found: measured('length', depth),
          limit: measured('length', tested),
          ...(depth <= tested ? {} : { needs: 'a transducer tested as deep, or a dry place' }),
        },
      ],
    );
  },
});

function testedDepth({ depth, water }: Sealing, of: string): Answer<number> {
  if (depth !== undefined) return answer(depth);
  if (water === 7) return answer(depthOfSeven);
  if (water !== undefined && water < 7) return answer(0);
  return unanswered([{ of, what: 'depth of its test under water' }]);
}
