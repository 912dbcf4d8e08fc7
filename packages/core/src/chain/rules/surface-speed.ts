import { inWords, measured, said } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const surfaceSpeed = rule({
  id: 'chain/surface-speed',
  title: 'The shaft is not too fast for the tip that rides on it',
  prose: 'A tip on a shaft wears with the way it slides, and chatters when it no longer follows.',
  remedy: ['a probe without contact, with a transducer on the casing beside it', 'a smaller diameter to ride on'],
  sources: [clause(tradePractice, 'contact, wear, high speed')],
  judge: ({ point, prediction }) => {
    const highest = prediction.chain.transducer.surfaceSpeed;
    if (highest === undefined) return [];
    const stated = point.surroundings.values.surfaceSpeed;
    const what = 'surface speed under the tip';
    if (stated === undefined) {
      return judged(highest, { rule: 'chain/surface-speed', what }, (limit): readonly Judgement[] => [
        {
          rule: 'chain/surface-speed',
          outcome: 'warns',
          what,
          found: inWords('not stated'),
          limit: measured('velocity', limit),
          needs: said`a surface speed of at most ${measured('velocity', limit)}`,
        },
      ]);
    }
    return judged(
      fromAll({ limit: highest, is: answerOf(stated, point.of, 'surface speed') }, (known) => known),
      { rule: 'chain/surface-speed', what },
      ({ limit, is }): readonly Judgement[] => [
        {
          rule: 'chain/surface-speed',
          outcome: is <= limit ? 'meets' : 'fails',
          what,
          found: measured('velocity', is),
          limit: measured('velocity', limit),
          ...(is <= limit ? {} : { needs: 'a transducer without contact' }),
        },
      ],
    );
  },
});
