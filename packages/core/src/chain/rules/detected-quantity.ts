import { inWords } from '../../finding/measure.ts';
import { type Level, shortDetector } from '../../quantity/index.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const detectedQuantity = rule({
  id: 'chain/detected-quantity',
  title: 'The number must be of the quantity and detector wanted',
  prose:
    'An overall value of acceleration peak cannot be turned into velocity rms: the spectrum that would allow it is gone. ' +
    'Peak against rms alone is a factor of 1.41 for a sine and unknown for anything else.',
  remedy: [
    'choose the sensor with the quantity and detector of the limit',
    'restate the limit, by agreement with its owner',
  ],
  sources: [clause(loopPractice)],
  judge: ({ point, prediction }) => {
    const { oneNumber } = prediction.chain.transducer;
    if (oneNumber === undefined) return [];
    return point.targets
      .filter((target) => target.observable.isOneNumber)
      .flatMap((target) =>
        judged(oneNumber.range, { rule: 'chain/detected-quantity', what: 'gives', target }, (range) => {
          const wanted = [target.smallest, target.largest].flatMap((each) => (each.known ? [each.value] : []));
          const alike = (each: Level) => range.quantity === each.quantity && range.detector === each.detector;
          const odd = wanted.find((each) => !alike(each)) ?? wanted[0];
          if (odd === undefined) return [];
          const as = `${odd.quantity} ${shortDetector[odd.detector]}`;
          const judgement: Judgement = {
            rule: 'chain/detected-quantity',
            target: target.name,
            outcome: alike(odd) ? 'meets' : 'fails',
            what: 'gives',
            found: inWords(`${range.quantity} ${shortDetector[range.detector]}`),
            limit: inWords(as),
            ...(alike(odd)
              ? {}
              : { needs: `a sensor of ${as}, or the level as ${range.quantity} ${shortDetector[range.detector]}` }),
          };
          return [judgement];
        }),
      );
  },
});
