import { sees } from '../../demand/target.ts';
import { inWords, measured, measuredTolerance } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { magnitude } from '../../signal/complex.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** So slow that no corner of a measuring chain lies below it, and not zero, where a corner has no logarithm. */
const nearlyAtRest = 1e-6;

export const passesRest = rule({
  id: 'chain/passes-rest',
  title: 'A position arrives as it stands',
  prose:
    'A position does not move, so whatever has a lower corner shows it for a moment and then zero: a piezo element, a ' +
    'coil, an input with coupling. A chain that shows zero looks like a shaft in its place.',
  remedy: ['an input that passes the constant part', 'a transducer that senses where things stand'],
  sources: [clause(tradePractice)],
  judge: ({ point, prediction }) =>
    point.targets
      .filter((target) => target.observable.atRest && sees(prediction.chain.transducer.reference, target.reference))
      .flatMap((target) =>
        judged(
          fromAll({ response: prediction.response, tolerance: target.tolerance }, (known) => known),
          { rule: 'chain/passes-rest', what: 'response at rest', target },
          ({ response, tolerance }): readonly Judgement[] => {
            const { senses } = prediction.chain.transducer;
            if (senses !== target.motion) {
              return [
                {
                  rule: 'chain/passes-rest',
                  target: target.name,
                  outcome: 'fails',
                  what: 'senses',
                  found: inWords(senses),
                  limit: inWords(`${target.motion}, which no ${senses} tells at rest`),
                  needs: `a transducer of ${target.motion}`,
                },
              ];
            }
            const error = magnitude(response(nearlyAtRest)) - 1;
            const inside = error >= tolerance.low && error <= tolerance.high;
            return [
              {
                rule: 'chain/passes-rest',
                target: target.name,
                outcome: inside ? 'meets' : 'fails',
                what: 'response error at rest',
                found: measured('fraction', error),
                limit: measuredTolerance(tolerance),
                ...(inside ? {} : { needs: 'a transducer and an input that pass a constant value' }),
              },
            ];
          },
        ),
      ),
});
