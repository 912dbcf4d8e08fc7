import { inWords } from '../../finding/measure.ts';
import { type Sheet, type Stated, valueIfStated } from '../../quantity/index.ts';
import { iec60529 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Sealing } from '../sealing.ts';
import { rule } from './rule.ts';

const id = 'chain/water-jets';

export const waterJets = rule({
  id,
  title: 'A test under water is no test in jets',
  prose:
    'The second digit is a ladder up to 6 only. IPx7 and IPx8 are tests under still water and do not imply IPx5 or IPx6, ' +
    'which are jets from a hose: where a place is washed down both count, as in IP66/IP68, or IPx9 for hot jets close by.',
  remedy: ['a transducer with both codes, such as IP66/IP68', 'a hermetic one', 'keep the hose away'],
  sources: [clause(iec60529, 'IPX7 and IPX8 do not imply IPX5 and IPX6')],
  judge: ({ point, prediction }) => {
    if (valueIfStated(point.surroundings.values.exposure) !== 'washed down') return [];
    const offered = valueIfStated(
      (prediction.chain.parts.transducer.sheet as Sheet).values.sealing as Stated<Sealing> | undefined,
    );
    // Without a code the rule of the sealing asks; a hermetic body has no seal that a jet could open.
    if (offered?.water === undefined || offered.state === 'hermetic') return [];
    return [
      {
        rule: id,
        outcome: offered.jets ? 'meets' : 'warns',
        what: 'sealing against jets',
        found: inWords(offered.written),
        limit: inWords('IPx5, IPx6 or IPx9, beside the test under water'),
        ...(offered.jets ? {} : { needs: 'word from its maker on jets, or a second code' }),
      },
    ];
  },
});
