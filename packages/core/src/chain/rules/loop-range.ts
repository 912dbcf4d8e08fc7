import { measuredLevel, said } from '../../finding/measure.ts';
import { fromAll, level } from '../../quantity/index.ts';
import { namurNe43 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

/** The measuring signal ends at 20.5 mA: 16.5/16 of the range. */
const endOfMeasuring = 16.5 / 16;

export const loopRange = rule({
  id: 'chain/loop-range',
  title: 'The largest level lies within the range',
  prose: 'Above 20.5 mA the loop says no more than that it is too much; a trip there can neither be set nor tested.',
  remedy: ['a sensor with a larger range', 'agree a smaller level to survive'],
  sources: [clause(namurNe43)],
  judge: ({ point, prediction }) => {
    const { oneNumber } = prediction.chain.transducer;
    if (oneNumber === undefined) return [];
    return point.targets
      .filter((target) => target.observable.isOneNumber)
      .flatMap((target) =>
        judged(
          fromAll({ range: oneNumber.range, largest: target.largest }, (known) => known),
          { rule: 'chain/loop-range', what: 'largest level', target },
          ({ range, largest }): readonly Judgement[] => {
            if (range.quantity !== largest.quantity || range.detector !== largest.detector) return [];
            const limit = range.value * endOfMeasuring;
            return [
              {
                rule: 'chain/loop-range',
                target: target.name,
                outcome: largest.value <= limit ? 'meets' : 'fails',
                what: 'largest level',
                found: measuredLevel(largest),
                limit: measuredLevel(level(range.quantity, limit, range.detector)),
                margin: marginOf(limit / largest.value),
                ...(largest.value <= limit ? {} : { needs: said`a range of at least ${measuredLevel(largest)}` }),
              },
            ];
          },
        ),
      );
  },
});
