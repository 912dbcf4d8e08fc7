import { measured, measuredSpan } from '../../finding/measure.ts';
import { answerOf, fromAll, type Sheet, type Span, type Stated } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const temperature = rule({
  id: 'chain/temperature',
  title: 'The surface is within what the parts bear',
  prose: 'Skin temperature of the surface, not of the process; with the heat that soaks through after a stop.',
  remedy: [
    'a transducer for that temperature',
    'a charge accelerometer with its converter in the cool',
    'another position',
  ],
  sources: [clause(tradePractice)],
  judge: ({ point, prediction }) => {
    const { transducer, mount } = prediction.chain.parts;
    return [transducer, mount].flatMap((part) => {
      const stated = (part.sheet as Sheet).values.temperature as Stated<Span<'temperature'>> | undefined;
      if (stated === undefined) return [];
      return judged(
        fromAll(
          {
            rated: answerOf(stated, part.sheet.of, 'temperature'),
            surface: answerOf(point.surfaceTemperature, point.of, 'surface temperature'),
          },
          (known) => known,
        ),
        { rule: 'chain/temperature', what: `surface under ${part.name}` },
        ({ rated, surface }): readonly Judgement[] => {
          const inside = surface >= rated.low && surface <= rated.high;
          return [
            {
              rule: 'chain/temperature',
              outcome: inside ? 'meets' : 'fails',
              what: `surface under ${part.name}`,
              found: measured('temperature', surface),
              limit: measuredSpan('temperature', rated),
              ...(inside ? {} : { needs: `a rating that includes the surface` }),
            },
          ];
        },
      );
    });
  },
});
