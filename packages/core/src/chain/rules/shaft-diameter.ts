import { sees } from '../../demand/target.ts';
import { inWords, measured, said } from '../../finding/measure.ts';
import { answerOf, fromAll } from '../../quantity/index.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const shaftDiameter = rule({
  id: 'chain/shaft-diameter',
  title: 'The shaft is thick enough for the probe',
  prose:
    'The field of a probe spreads wider than its tip. On a thin shaft part of it passes by: the scale factor falls, and ' +
    'two probes at right angles hear each other through the steel.',
  remedy: ['a smaller probe', 'a thicker place on the shaft', 'calibrate on that diameter'],
  sources: [clause(api670, 'shaft diameter')],
  judge: ({ point, prediction }) => {
    const { probe, reference } = prediction.chain.transducer;
    if (probe?.smallestShaft === undefined) return [];
    if (!point.targets.some((target) => sees(reference, target.reference))) return [];
    const stated = point.surroundings.values.shaftDiameter;
    if (stated === undefined) {
      return judged(
        probe.smallestShaft,
        { rule: 'chain/shaft-diameter', what: 'diameter of the shaft' },
        (least): readonly Judgement[] => [
          {
            rule: 'chain/shaft-diameter',
            outcome: 'warns',
            what: 'diameter of the shaft',
            found: inWords('not stated'),
            limit: said`at least ${measured('length', least)}`,
            needs: said`a shaft of at least ${measured('length', least)} at the probe`,
          },
        ],
      );
    }
    return judged(
      fromAll({ least: probe.smallestShaft, is: answerOf(stated, point.of, 'shaft diameter') }, (known) => known),
      { rule: 'chain/shaft-diameter', what: 'diameter of the shaft' },
      ({ least, is }): readonly Judgement[] => [
        {
          rule: 'chain/shaft-diameter',
          outcome: is >= least ? 'meets' : 'fails',
          what: 'diameter of the shaft',
          found: measured('length', is),
          limit: said`at least ${measured('length', least)}`,
          ...(is >= least ? {} : { needs: said`a probe for ${measured('length', is)}` }),
        },
      ],
    );
  },
});
