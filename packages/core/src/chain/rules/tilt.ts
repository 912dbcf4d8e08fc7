import { inWords, measured, said } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const tilt = rule({
  id: 'chain/tilt',
  title: 'The coil hangs as it was made to',
  prose:
    'Gravity pulls a coil out of the middle of its travel as soon as it leans, by g·sin θ over the square of its angular ' +
    'natural frequency: 2.5 mm at 10 Hz if it lies instead of stands. A coil on its stop measures nothing.',
  remedy: ['the version for that position', 'a transducer without a suspension', 'level the bracket'],
  sources: [clause(tradePractice, 'moving coil: orientation')],
  judge: ({ point, prediction }) => {
    const largest = prediction.chain.transducer.largestTilt;
    if (largest === undefined) return [];
    const stated = point.surroundings.values.tilt;
    const what = 'lean of the axis';
    if (stated === undefined) {
      return judged(largest, { rule: 'chain/tilt', what }, (limit): readonly Judgement[] => [
        {
          rule: 'chain/tilt',
          outcome: 'warns',
          what,
          found: inWords('not stated'),
          limit: measured('angle', limit),
          needs: said`an axis within ${measured('angle', limit)} of its position of use`,
        },
      ]);
    }
    return judged(
      fromAll({ limit: largest, is: answerOf(stated, point.of, 'tilt') }, (known) => known),
      { rule: 'chain/tilt', what },
      ({ limit, is }): readonly Judgement[] => [
        {
          rule: 'chain/tilt',
          outcome: Math.abs(is) <= limit ? 'meets' : 'fails',
          what,
          found: measured('angle', is),
          limit: measured('angle', limit),
          ...(Math.abs(is) <= limit ? {} : { needs: said`a lean of at most ${measured('angle', limit)}` }),
        },
      ],
    );
  },
});
