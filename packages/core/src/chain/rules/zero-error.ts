import { measuredLevel, said } from '../../finding/measure.ts';
import { fromAll, level } from '../../quantity/index.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

export const zeroError = rule({
  id: 'chain/zero-error',
  title: 'The smallest level is more than the error of the zero',
  prose:
    'A detecting sensor reads its zero error on a machine that stands still; a smaller level cannot be told from it.',
  remedy: ['a sensor with a smaller range', 'a sensor with a better zero'],
  sources: [clause(loopPractice)],
  judge: ({ point, prediction }) => {
    const { oneNumber } = prediction.chain.transducer;
    if (oneNumber === undefined) return [];
    return point.targets
      .filter((target) => target.observable.isOneNumber)
      .flatMap((target) =>
        judged(
          fromAll({ range: oneNumber.range, error: oneNumber.zeroError, smallest: target.smallest }, (known) => known),
          { rule: 'chain/zero-error', what: 'smallest level', target },
          ({ range, error, smallest }): readonly Judgement[] => {
            if (range.quantity !== smallest.quantity || range.detector !== smallest.detector) return [];
            const least = level(range.quantity, range.value * error, range.detector);
            return [
              {
                rule: 'chain/zero-error',
                target: target.name,
                outcome: smallest.value > least.value ? 'meets' : 'fails',
                what: 'smallest level',
                found: measuredLevel(smallest),
                limit: said`above the zero error of ${measuredLevel(least)}`,
                margin: marginOf(smallest.value / least.value),
                ...(smallest.value > least.value ? {} : { needs: 'a smaller range or a better zero' }),
              },
            ];
          },
        ),
      );
  },
});
