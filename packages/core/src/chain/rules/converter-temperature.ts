import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const converterTemperature = rule({
  id: 'chain/converter-temperature',
  title: 'The electronics beside the machine are in the cool',
  prose:
    'A charge element bears what its converter does not, a probe what its driver does not. The box they sit in has its ' +
    'own temperature: sun, steam line, the cabinet of a drive.',
  remedy: ['another place for it, as far as its cable reaches', 'a heat shield, or a ventilated box'],
  sources: [clause(tradePractice, 'charge: check cable and converter separately')],
  judge: ({ point, prediction }) => {
    const { apart } = prediction.chain.transducer;
    if (apart === undefined) return [];
    const place = point.surroundings.values.converterTemperature;
    const what = `surroundings of the ${apart.name}`;
    if (place === undefined) {
      return judged(apart.temperature, { rule: 'chain/converter-temperature', what }, (rated): readonly Judgement[] => [
        {
          rule: 'chain/converter-temperature',
          outcome: 'warns',
          what,
          found: { is: 'words', words: 'not stated' },
          limit: measuredSpan('temperature', rated),
          needs: said`a place for the ${apart.name} within ${measuredSpan('temperature', rated)}`,
        },
      ]);
    }
    return judged(
      fromAll(
        { rated: apart.temperature, around: answerOf(place, point.of, 'converter temperature') },
        (known) => known,
      ),
      { rule: 'chain/converter-temperature', what },
      ({ rated, around }): readonly Judgement[] => {
        const inside = around >= rated.low && around <= rated.high;
        return [
          {
            rule: 'chain/converter-temperature',
            outcome: inside ? 'meets' : 'fails',
            what,
            found: measured('temperature', around),
            limit: measuredSpan('temperature', rated),
            ...(inside ? {} : { needs: said`a place within ${measuredSpan('temperature', rated)}` }),
          },
        ];
      },
    );
  },
});
