import { measured, said } from '../../finding/measure.ts';
import { type Answer, answerOf, fromAll, type Quantity, type Stated } from '../../quantity/index.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const probeClearance = rule({
  id: 'chain/probe-clearance',
  title: 'The probe sees the shaft and nothing beside it',
  prose:
    'Metal beside the tip, a counterbore too narrow or a second tip too near, is part of what the probe sees: the scale ' +
    'factor changes, or two probes beat against each other.',
  remedy: ['a wider counterbore', 'move the probes apart along the shaft', 'a smaller probe'],
  sources: [clause(api670, 'free area and tip spacing')],
  judge: ({ point, prediction }) => {
    const { probe } = prediction.chain.transducer;
    const { sideClearance, tipSpacing } = point.surroundings.values;
    return [
      ...enough('side clearance', 'clear of metal to the side', probe?.sideClearance, sideClearance, point.of),
      ...enough('tip spacing', 'distance to the next tip', probe?.tipSpacing, tipSpacing, point.of),
    ];
  },
});

/** Nothing is said of what the point does not state: most probes look through a bracket of their own. */
function enough(
  field: string,
  what: string,
  least: Answer<number> | undefined,
  stated: Stated<Quantity<'length'>> | undefined,
  of: string,
): readonly Judgement[] {
  if (least === undefined || stated === undefined) return [];
  return judged(
    fromAll({ least, is: answerOf(stated, of, field) }, (known) => known),
    { rule: 'chain/probe-clearance', what },
    ({ least: needed, is }): readonly Judgement[] => [
      {
        rule: 'chain/probe-clearance',
        outcome: is >= needed ? 'meets' : 'fails',
        what,
        found: measured('length', is),
        limit: said`at least ${measured('length', needed)}`,
        ...(is >= needed ? {} : { needs: said`${measured('length', needed - is)} more` }),
      },
    ],
  );
}
