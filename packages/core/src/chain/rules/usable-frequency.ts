import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

export const usableFrequency = rule({
  id: 'chain/usable-frequency',
  title: 'Within the frequencies the data sheet speaks of',
  prose:
    'Above the highest frequency of its data sheet nobody has said what the transducer does, so nothing may rest on it.',
  remedy: ['choose a transducer that is specified there', 'have this one calibrated there'],
  sources: [clause(tradePractice)],
  judge: ({ point, prediction }) => {
    const { usableTo } = prediction.chain.transducer;
    if (usableTo === undefined) return [];
    return point.targets
      .filter((target) => !target.observable.atRest)
      .flatMap((target) =>
        judged(
          fromAll({ usableTo, band: target.band }, (known) => known),
          { rule: 'chain/usable-frequency', what: 'wanted up to', target },
          ({ usableTo: limit, band }): readonly Judgement[] => [
            {
              rule: 'chain/usable-frequency',
              target: target.name,
              outcome: band.high <= limit * (1 + 1e-9) ? 'meets' : 'fails',
              what: 'wanted up to',
              found: measured('frequency', band.high),
              limit: measured('frequency', limit),
              margin: marginOf(limit / band.high),
              ...(band.high <= limit * (1 + 1e-9)
                ? {}
                : { needs: said`a data sheet up to ${measured('frequency', band.high)}` }),
            },
          ],
        ),
      );
  },
});
