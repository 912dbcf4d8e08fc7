import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { loopPractice, namurNe43 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

export const loopLoad = rule({
  id: 'chain/loop-load',
  title: 'The loop still drives its failure current',
  prose:
    'At the lowest supply voltage the loop must carry the failure current through cable, card and whatever else is in it, ' +
    'and still leave the sensor its least voltage. A second indicator added later is the usual way to lose it.',
  remedy: [
    'fewer or smaller resistances in the loop',
    'a higher supply voltage',
    'a larger conductor',
    'a sensor that needs less voltage',
  ],
  sources: [clause(loopPractice), clause(namurNe43)],
  judge: ({ prediction }) => {
    const { loop } = prediction;
    if (loop === undefined) return [];
    return judged(
      fromAll({ is: loop.resistance, may: loop.largestResistance, spare: loop.spare }, (known) => known),
      { rule: 'chain/loop-load', what: 'loop resistance' },
      ({ is, may, spare }): readonly Judgement[] => [
        {
          rule: 'chain/loop-load',
          outcome: is <= may ? 'meets' : 'fails',
          what: said`loop resistance (${measured('voltage', spare)} to spare at ${measured('current', loop.failureCurrent)})`,
          found: measured('resistance', is),
          limit: measured('resistance', may),
          margin: marginOf(may / is),
          ...(is <= may ? {} : { needs: said`${measured('resistance', is - may)} less in the loop` }),
        },
      ],
    );
  },
});
