import { decibels } from '../../finding/measure.ts';
import { showLevel } from '../../quantity/index.ts';
import { screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { visibility } from '../visibility.ts';
import { type Judgement, judged, rule } from './rule.ts';

export const signalToNoise = rule({
  id: 'chain/signal-to-noise',
  title: 'The smallest level stands out of the noise',
  prose:
    'Noise of the transducer and of the input, added as squares and carried to the end of the chain, in the line or band ' +
    'in which the target is looked for and in its own motion. More millivolts per g help only against the noise of the input.',
  remedy: [
    'a transducer with less noise in that band',
    'an input with less noise',
    'finer lines, longer record',
    'accept a larger smallest level',
  ],
  sources: [clause(screeningRules, 'rule 4'), clause(screeningRules, 'F15, F16')],
  judge: ({ point, prediction, policy }) =>
    point.targets
      .filter(
        (target) =>
          target.reference === prediction.chain.transducer.reference &&
          !target.observable.atRest &&
          prediction.chain.transducer.signal === 'dynamic',
      )
      .flatMap((target) =>
        judged(
          visibility(target, prediction),
          { rule: 'chain/signal-to-noise', what: 'signal over noise', target, limit: decibels(policy.detection) },
          (seen) => {
            const judgement: Judgement = {
              rule: 'chain/signal-to-noise',
              target: target.name,
              outcome: seen.decibels < policy.detection ? 'fails' : 'meets',
              what: `signal over noise (${showLevel(seen.signal)} over ${showLevel(seen.noise)})`,
              found: decibels(seen.decibels),
              limit: decibels(policy.detection),
              margin: seen.decibels - policy.detection,
              ...('line' in seen.bandwidth ? { frequency: seen.bandwidth.line } : {}),
              ...(seen.decibels < policy.detection
                ? { needs: `noise lower by ${(policy.detection - seen.decibels).toFixed(1)} dB` }
                : {}),
            };
            return [judgement];
          },
        ),
      ),
});
