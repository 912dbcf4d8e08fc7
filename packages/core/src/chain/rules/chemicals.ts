import { inWords } from '../../finding/measure.ts';
import { answerOf, fromAll, type Sheet, type Stated } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

const id = 'chain/chemicals';

export const chemicals = rule({
  id,
  title: 'The jacket resists what is in the air and on the floor',
  prose:
    'Oil swells one plastic, ammonia or sunlight splits another. Compared are words: what attacks at the place with what the ' +
    'maker of the cable names, so a name that is missing there is asked about, not condemned.',
  remedy: ['a cable whose maker names it', 'a conduit', 'ask the maker of the cable'],
  sources: [clause(tradePractice, 'checklist of surroundings')],
  judge: ({ point, prediction }) => {
    const stated = point.surroundings.values.chemicals;
    if (stated === undefined) return [];
    const { cable } = prediction.chain.parts;
    const what = `what the jacket of ${cable.name} resists`;
    return judged(
      fromAll(
        {
          there: answerOf(stated, point.of, 'chemicals'),
          resists: answerOf(
            (cable.sheet as Sheet).values.resists as Stated<string> | undefined,
            cable.sheet.of,
            'what it resists',
          ),
        },
        (known) => known,
      ),
      { rule: id, what },
      ({ there, resists }): readonly Judgement[] => {
        const named = namesIn(resists);
        const missing = namesIn(there).filter((each) => !named.includes(each));
        return [
          {
            rule: id,
            outcome: missing.length === 0 ? 'meets' : 'warns',
            what,
            found: inWords(resists),
            limit: inWords(there),
            ...(missing.length === 0 ? {} : { needs: `word from its maker on ${missing.join(' and ')}` }),
          },
        ];
      },
    );
  },
});

function namesIn(text: string): readonly string[] {
  return text
    .split(/[,;]/)
    .map((each) => each.trim().toLowerCase())
    .filter((each) => each !== '');
}
