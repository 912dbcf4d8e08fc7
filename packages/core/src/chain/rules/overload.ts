import { seenBy } from '../../demand/target.ts';
import { measuredLevel, said } from '../../finding/measure.ts';
import { level } from '../../quantity/index.ts';
import { screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { worstPeak } from '../worst-peak.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

export const overload = rule({
  id: 'chain/overload',
  title: 'The worst peak passes every ceiling',
  prose:
    'All largest levels together, as if they met in phase, with the knocks and whatever the mounted resonance makes of ' +
    'them, against the rated range, the swing left by bias and supply, the travel, the input. What clips outside the band ' +
    'is seen inside it, as noise that was never there.',
  remedy: [
    'a lower sensitivity',
    'a higher supply voltage or a transducer with another bias',
    'a mechanical filter',
    'a larger input range',
  ],
  sources: [clause(screeningRules, 'rule 5'), clause(screeningRules, 'F17')],
  judge: ({ point, prediction, policy }) =>
    prediction.ceilings.flatMap((ceiling) =>
      judged(
        worstPeak(
          ceiling,
          seenBy(prediction.chain.transducer.reference, point.targets),
          point.disturbances,
          prediction.features,
        ),
        { rule: 'chain/overload', what: 'worst peak' },
        (worst): readonly Judgement[] => {
          // Nothing moves that it sees: what only stands somewhere is judged by travel and position.
          if (worst.peak === 0) return [];
          const { headroomDecibels: headroom } = worst;
          const judgement: Judgement = {
            rule: 'chain/overload',
            outcome: headroom < 0 ? 'fails' : headroom < policy.headroom ? 'warns' : 'meets',
            what: `worst peak against ${worst.ceiling.name}`,
            found: measuredLevel(level(worst.ceiling.motion, worst.peak, 'peak')),
            limit: measuredLevel(level(worst.ceiling.motion, worst.ceiling.peak, 'peak')),
            margin: marginOf(worst.ceiling.peak / worst.peak),
            ...(headroom < 0
              ? {
                  needs: said`${worst.ceiling.name} of at least ${measuredLevel(level(worst.ceiling.motion, worst.peak, 'peak'))}`,
                }
              : {}),
          };
          return [judgement];
        },
      ),
    ),
});
