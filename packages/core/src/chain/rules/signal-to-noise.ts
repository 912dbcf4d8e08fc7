import type { Policy } from '../../demand/policy.ts';
import { sees, type Target } from '../../demand/target.ts';
import {
  decibels,
  inWords,
  measured,
  measuredChange,
  measuredLevel,
  measuredTolerance,
  said,
} from '../../finding/measure.ts';
import { fromAll, type Tolerance } from '../../quantity/index.ts';
import { screeningRules } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { lostInNoise, type Visibility, visibility } from '../visibility.ts';
import { type Judgement, judged, largestMargin, rule } from './rule.ts';

export const signalToNoise = rule({
  id: 'chain/signal-to-noise',
  title: 'The smallest level stands out of the noise',
  prose:
    'Noise of the transducer and of the input, added as squares and carried to the end of the chain, in the line or band ' +
    'in which the target is looked for and in its own motion. A line or a burst must stand out of it; to an overall value ' +
    'it adds, as squares, and the reading must stay within its tolerance. More millivolts per g help only against the ' +
    'noise of the input.',
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
          sees(prediction.chain.transducer.reference, target.reference) &&
          !target.observable.atRest &&
          prediction.chain.transducer.signal === 'dynamic',
      )
      .flatMap((target) =>
        judged(
          fromAll({ seen: visibility(target, prediction), tolerance: target.tolerance }, (known) => known),
          { rule: 'chain/signal-to-noise', what: 'signal over noise', target },
          ({ seen, tolerance }) => [
            seen.decibels <= lostInNoise
              ? lost(target, policy)
              : target.observable.noise === 'hides'
                ? hidden(target, seen, policy)
                : added(target, seen, tolerance, policy),
          ],
        ),
      ),
});

/** Nothing of the smallest level reaches the end of the chain, so no ratio says how much is missing. */
function lost(target: Target, policy: Policy): Judgement {
  return {
    rule: 'chain/signal-to-noise',
    target: target.name,
    outcome: 'fails',
    what: 'the smallest level comes out as',
    found: inWords('nothing that can be told from zero'),
    limit: target.observable.noise === 'hides' ? decibels(policy.detection) : inWords('a level above the noise'),
    margin: -largestMargin,
    needs: 'a chain that passes these frequencies, its resonance and its corners in the unit that was meant',
  };
}

function hidden(target: Target, seen: Visibility, policy: Policy): Judgement {
  const short = policy.detection - seen.decibels;
  return {
    rule: 'chain/signal-to-noise',
    target: target.name,
    outcome: short > 0 ? 'fails' : 'meets',
    what: said`signal over noise (${measuredLevel(seen.signal)} over ${measuredLevel(seen.noise)})`,
    found: decibels(seen.decibels),
    limit: decibels(policy.detection),
    margin: -short,
    ...('line' in seen.bandwidth ? { frequency: seen.bandwidth.line } : {}),
    ...(short > 0 ? { needs: `noise lower by ${short.toFixed(1)} dB` } : {}),
  };
}

/** √(s² + n²) is read for s: too high by √(1 + (n/s)²) − 1. */
function added(target: Target, seen: Visibility, tolerance: Tolerance, policy: Policy): Judgement {
  const error = Math.sqrt(1 + 10 ** (-seen.decibels / 10)) - 1;
  const left = tolerance.high - error;
  const bearable = -10 * Math.log10((1 + tolerance.high) ** 2 - 1);
  return {
    rule: 'chain/signal-to-noise',
    target: target.name,
    outcome: left < 0 ? 'fails' : left < policy.response ? 'warns' : 'meets',
    what: said`noise adds to the smallest level (${measuredLevel(seen.signal)} over ${measuredLevel(seen.noise)}, ${decibels(seen.decibels)})`,
    found: measured('fraction', error),
    limit: measuredTolerance(tolerance),
    margin: seen.decibels - bearable,
    ...(left < 0
      ? {
          needs: said`noise lower by ${(bearable - seen.decibels).toFixed(1)} dB, to add no more than ${measuredChange(tolerance.high)}`,
        }
      : {}),
  };
}
