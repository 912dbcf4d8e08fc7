import type { Exposure } from '../../demand/surroundings.ts';
import { inWords } from '../../finding/measure.ts';
import { type Answer, answer, answerOf, fromAll, type Sheet, type Stated, unanswered } from '../../quantity/index.ts';
import { iec60529, screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Sealing } from '../sealing.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** What a place asks of the sealing: the second digit of the IP code, and whether a mated connector will do. */
const asked: Readonly<Record<Exposure, { readonly water: number; readonly mated: boolean; readonly words: string }>> = {
  dry: { water: 0, mated: true, words: 'any' },
  splashed: { water: 4, mated: true, words: 'IPx4 or more' },
  'washed down': { water: 8, mated: false, words: 'IP68 moulded or continuous, or hermetic' },
  immersed: { water: 8, mated: false, words: 'IP68 moulded or continuous, or hermetic' },
};

export const sealing = rule({
  id: 'chain/sealing',
  title: 'What keeps the water out stays as the test found it',
  prose:
    'An IP67 connector was under water for half an hour, clean and newly mated. Washed down day by day it breathes water ' +
    'in as it cools: the bias creeps for weeks before it fails. Where water is the rule the cable must be part of the body.',
  remedy: [
    'a transducer with a moulded cable, sealed for continuous immersion',
    'a hermetic one',
    'keep the water away',
  ],
  sources: [clause(screeningRules, 'rule 1'), clause(iec60529)],
  judge: ({ point, prediction }) => {
    const { exposure } = point.surroundings.values;
    if (exposure === undefined) return [];
    const sheet = prediction.chain.parts.transducer.sheet as Sheet;
    const stated = sheet.values.sealing as Stated<Sealing> | undefined;
    return judged(
      fromAll(
        {
          place: answerOf(exposure, point.of, 'exposure'),
          offered: answerOf(stated, sheet.of, 'sealing'),
        },
        (known) => known,
      ),
      { rule: 'chain/sealing', what: 'sealing' },
      ({ place, offered }) =>
        judged(
          keepsOut(offered, place, sheet.of),
          { rule: 'chain/sealing', what: `sealing ${offered.written}, place ${place}` },
          (tight): readonly Judgement[] => [
            {
              rule: 'chain/sealing',
              outcome: tight ? 'meets' : 'fails',
              what: `${place} place, sealing`,
              found: inWords(offered.written),
              limit: inWords(asked[place].words),
              ...(tight ? {} : { needs: asked[place].words }),
            },
          ],
        ),
    );
  },
});

function keepsOut(offered: Sealing, place: Exposure, of: string): Answer<boolean> {
  const { water, mated } = asked[place];
  if (water === 0 || offered.state === 'hermetic') return answer(true);
  if (!mated && offered.state === 'mated') return answer(false);
  if (offered.water === undefined) return unanswered([{ of, what: 'IP code of the sealing' }]);
  const lasting = mated || offered.state === 'moulded' || offered.state === 'continuous';
  return answer(offered.water >= water && lasting);
}
