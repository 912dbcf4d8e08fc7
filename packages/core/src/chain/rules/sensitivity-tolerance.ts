import { measuredTolerance } from '../../finding/measure.ts';
import { answerOf, fromAll, type Sheet, type Stated, type Tolerance } from '../../quantity/index.ts';
import { screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const sensitivityTolerance = rule({
  id: 'chain/sensitivity-tolerance',
  title: 'The nominal sensitivity is good enough, or the calibrated one must be loaded',
  prose:
    'Where pieces differ by more than the target allows, the value from the calibration certificate of this very piece ' +
    'must be entered; with the nominal one the promise is already broken.',
  remedy: ['load the individual calibration value', 'buy a closer tolerance'],
  sources: [clause(screeningRules, 'rule 7')],
  judge: ({ point, prediction }) => {
    const { transducer } = prediction.chain.parts;
    const stated = (transducer.sheet as Sheet).values.sensitivityTolerance as Stated<Tolerance>;
    return point.targets
      .filter((target) => !target.observable.atRest)
      .flatMap((target) =>
        judged(
          fromAll(
            { piece: answerOf(stated, transducer.sheet.of, 'sensitivity tolerance'), allowed: target.tolerance },
            (known) => known,
          ),
          { rule: 'chain/sensitivity-tolerance', what: 'sensitivity of one piece', target },
          ({ piece, allowed }): readonly Judgement[] => {
            const wide = piece.high > allowed.high + 1e-12 || piece.low < allowed.low - 1e-12;
            return [
              {
                rule: 'chain/sensitivity-tolerance',
                target: target.name,
                outcome: wide ? 'warns' : 'meets',
                what: 'sensitivity of one piece',
                found: measuredTolerance(piece),
                limit: measuredTolerance(allowed),
                ...(wide ? { needs: 'the individual calibration value to be loaded' } : {}),
              },
            ];
          },
        ),
      );
  },
});
