import { measured, measuredSpan } from '../../finding/measure.ts';
import { answerOf, fromAll, type Sheet, type Span, type Stated } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

const id = 'chain/connector-temperature';

export const connectorTemperature = rule({
  id,
  title: 'The connector bears where it is',
  prose:
    'A connector has seals and an insert of plastic, and often bears less than the element behind it. It sits on the ' +
    'transducer, in its heat, and leaks first.',
  remedy: ['a transducer with an integral cable for that temperature', 'a connector for it', 'shield it from the heat'],
  sources: [clause(tradePractice, 'temperature of each element')],
  judge: ({ point, prediction }) => {
    const around = point.surroundings.values.connectorTemperature;
    if (around === undefined) return [];
    const { transducer } = prediction.chain.parts;
    const rated = (transducer.sheet as Sheet).values.connectorTemperature as Stated<Span<'temperature'>> | undefined;
    const what = `surroundings of the connector of ${transducer.name}`;
    return judged(
      fromAll(
        {
          rated: answerOf(rated, transducer.sheet.of, 'connector temperature'),
          around: answerOf<number>(around, point.of, 'connector temperature'),
        },
        (known) => known,
      ),
      { rule: id, what },
      ({ rated: span, around: degrees }): readonly Judgement[] => {
        const inside = degrees >= span.low && degrees <= span.high;
        return [
          {
            rule: id,
            outcome: inside ? 'meets' : 'fails',
            what,
            found: measured('temperature', degrees),
            limit: measuredSpan('temperature', span),
            ...(inside ? {} : { needs: 'a connector with a rating that includes it, or none' }),
          },
        ];
      },
    );
  },
});
