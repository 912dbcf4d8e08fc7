import { measured, said } from '../../finding/measure.ts';
import { type Answer, answerOf, fromAll, type Sheet, type Stated } from '../../quantity/index.ts';
import { broch1984 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Prediction } from '../prediction.ts';
import { type Judgement, judged, rule } from './rule.ts';

/** Transducer and mount over the mass that moves with the surface; more changes what is to be measured. */
const largestShare = 0.1;
/** Beyond this the margin says no more than 'plenty'. */
const largestMargin = 60;

export const massLoading = rule({
  id: 'chain/mass-loading',
  title: 'The transducer is light against what it measures',
  prose:
    'A mass set on a surface makes it slower: its natural frequency falls as √(m/(m + Δm)), its motion as m/(m + Δm). A ' +
    'heavy transducer on a thin cover measures a cover with a transducer on it.',
  remedy: ['a lighter transducer', 'a stiffer, heavier place', 'a probe without contact'],
  sources: [clause(broch1984, '10 % rule of mass loading')],
  judge: ({ point, prediction }) => {
    const stated = point.surroundings.values.localMass;
    if (stated === undefined || prediction.chain.transducer.reference !== 'casing') return [];
    return judged(
      fromAll({ moved: movedMass(prediction), local: answerOf(stated, point.of, 'local mass') }, (known) => known),
      { rule: 'chain/mass-loading', what: 'mass of transducer and mount' },
      ({ moved, local }): readonly Judgement[] => {
        const limit = largestShare * local;
        const light = moved <= limit;
        return [
          {
            rule: 'chain/mass-loading',
            outcome: light ? 'meets' : 'fails',
            what: 'mass of transducer and mount',
            found: measured('mass', moved),
            limit: measured('mass', limit),
            margin: Math.max(-largestMargin, Math.min(largestMargin, 20 * Math.log10(limit / moved))),
            ...(light ? {} : { needs: said`transducer and mount of at most ${measured('mass', limit)}` }),
          },
        ];
      },
    );
  },
});

function movedMass({ chain }: Prediction): Answer<number> {
  const sheet = chain.parts.transducer.sheet as Sheet;
  return fromAll(
    {
      own: answerOf(sheet.values.mass as Stated<number> | undefined, sheet.of, 'mass'),
      mount: chain.mount.addedMass,
    },
    ({ own, mount }) => own + mount,
  );
}
