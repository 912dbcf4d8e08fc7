import { measuredChange, said } from '../../finding/measure.ts';
import { showFraction, toNumber } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { linkedTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

const twoGears = (second: number) => {
  const train = linkedTrain({ kind: 'gear-pair', 'driving-teeth': 25, 'driven-teeth': 84 });
  const lay = { kind: 'gear-pair', from: 'motor', to: 'machine', 'driving-teeth': 50, 'driven-teeth': second };
  return { ...train, elements: { ...train.elements, lay } };
};

export const relationsAgree = trainRule({
  id: 'machine/relations-agree',
  title: 'Where two paths join the same shafts, they give the same speed',
  prose: 'A shaft driven over two paths has one speed. If the paths give two, one of the counts or diameters is wrong.',
  sources: [clause(tradePractice, 'train kinematics from one reference speed')],
  finds: ({ train, speeds }) =>
    speeds.disagreements.flatMap(({ element, words, against, shaft, byThis, byOthers }) => {
      const both =
        byThis === undefined || byOthers === undefined
          ? words
          : `${shaft} turns ${showFraction(byThis)} of ${speeds.reference} by ${element}, ${showFraction(byOthers)} by ${against.join(' and ')}`;
      const apart =
        byThis === undefined || byOthers === undefined || byOthers.numerator === 0n
          ? ''
          : said`, ${measuredChange(toNumber(byThis) / toNumber(byOthers) - 1)} apart`;
      return [
        {
          weight: 'question',
          at: `${train.of}/${element}`,
          found: said`${both}${apart}`,
          limit: 'one speed for each shaft',
          because: 'The speeds of these shafts are not given until the paths agree.',
          remedy: [`check the counts and diameters of ${[element, ...against].join(', ')}`],
          asks: 'Which of them is right?',
        },
      ];
    }),
  valid: twoGears(168),
  invalid: twoGears(167),
});
