import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { iepePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const biasWindow = rule({
  id: 'chain/bias-window',
  title: 'The supply holds the bias, and the current suits the electronics',
  prose:
    'Over the whole tolerance of the bias there must be voltage left above and below it, and the supply current must lie ' +
    'within what the electronics take.',
  remedy: ['an input with more compliance voltage', 'a transducer with a lower bias', 'another supply current'],
  sources: [clause(iepePractice)],
  judge: ({ prediction }) => {
    const { biased } = prediction.chain.transducer;
    const { fedBy } = prediction.chain;
    if (biased === undefined || fedBy === undefined || prediction.bias === undefined) return [];
    const swing = judged(
      prediction.bias,
      { rule: 'chain/bias-window', what: 'swing about the bias' },
      ({ swing: { top, bottom } }) => {
        const least = Math.min(top, bottom);
        const judgement: Judgement = {
          rule: 'chain/bias-window',
          outcome: least > 0 ? 'meets' : 'fails',
          what: said`swing about the bias (${measured('voltage', top)} up, ${measured('voltage', bottom)} down), the smaller`,
          found: measured('voltage', least),
          limit: { is: 'words', words: 'above 0 V' },
          ...(least > 0 ? {} : { needs: neededVoltage(top, bottom) }),
        };
        return [judgement];
      },
    );
    const current = judged(
      fromAll({ fed: fedBy.current, taken: biased.supplyCurrent }, (known) => known),
      { rule: 'chain/bias-window', what: 'supply current' },
      ({ fed, taken }): readonly Judgement[] => {
        const inside = fed >= taken.low && fed <= taken.high;
        return [
          {
            rule: 'chain/bias-window',
            outcome: inside ? 'meets' : 'fails',
            what: 'supply current',
            found: measured('current', fed),
            limit: measuredSpan('current', taken),
            ...(inside ? {} : { needs: said`a supply current within ${measuredSpan('current', taken)}` }),
          },
        ];
      },
    );
    return [...swing, ...current];
  },
});

/** More compliance helps only at the top; at the bottom the bias itself is too low. */
function neededVoltage(top: number, bottom: number): string {
  const short = [
    ...(top > 0 ? [] : [said`more than ${measured('voltage', -top)} more compliance voltage`]),
    ...(bottom > 0 ? [] : [said`a lowest bias more than ${measured('voltage', -bottom)} higher`]),
  ];
  return short.join(', and ');
}
