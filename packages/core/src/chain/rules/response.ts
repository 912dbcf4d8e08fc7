import { sees } from '../../demand/target.ts';
import { measured, measuredTolerance } from '../../finding/measure.ts';
import { fromAll, type Tolerance } from '../../quantity/index.ts';
import { singleDegreeOfFreedom } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { type ResponseFound, responseExtremes } from '../response.ts';
import { type Judgement, judged, marginOf, rule } from './rule.ts';

/** Room left of the tolerance on the side the error lies, in decibels of allowed over found. */
function roomLeft(error: number, tolerance: Tolerance): { readonly ratio: number; readonly left: number } {
  const allowed = error >= 0 ? tolerance.high : -tolerance.low;
  const size = Math.abs(error);
  return { ratio: size === 0 ? Number.MAX_VALUE : allowed / size, left: allowed - size };
}

export const response = rule({
  id: 'chain/response',
  title: 'Amplitude arrives within the tolerance',
  prose:
    'Corners take the low frequencies away, the mounted resonance lifts the high ones. The error of the whole chain is ' +
    'judged at each frequency that matters; of a burst, over its whole band, with any resonance inside it.',
  remedy: [
    'a stiffer mount',
    'a transducer with a higher mounted resonance',
    'a lower corner in transducer or input',
    'a narrower band',
  ],
  sources: [clause(singleDegreeOfFreedom)],
  judge: ({ point, prediction, policy }) =>
    point.targets
      .filter((target) => sees(prediction.chain.transducer.reference, target.reference) && !target.observable.atRest)
      .flatMap((target) =>
        judged(
          fromAll({ extremes: responseExtremes(target, prediction), tolerance: target.tolerance }, (known) => known),
          { rule: 'chain/response', what: 'response error', target },
          ({ extremes, tolerance }): readonly Judgement[] => {
            const worst = worse(extremes.highest, extremes.lowest, tolerance);
            const { ratio, left } = roomLeft(worst.error, tolerance);
            return [
              {
                rule: 'chain/response',
                target: target.name,
                outcome: ratio < 1 ? 'fails' : left < policy.response ? 'warns' : 'meets',
                what: 'response error',
                found: measured('fraction', worst.error),
                limit: measuredTolerance(tolerance),
                frequency: worst.frequency,
                margin: marginOf(ratio),
                ...(ratio < 1 ? { needs: neededResponse(worst, tolerance) } : {}),
              },
            ];
          },
        ),
      ),
});

function worse(a: ResponseFound, b: ResponseFound, tolerance: Tolerance): ResponseFound {
  return roomLeft(a.error, tolerance).ratio <= roomLeft(b.error, tolerance).ratio ? a : b;
}

/** For an undamped resonance +e is reached at r = √(1 − 1/(1 + e)): the resonance needed lies at f/r. */
function neededResponse(worst: ResponseFound, tolerance: Tolerance): string {
  if (worst.error > 0) {
    if (tolerance.high <= 0) return 'a tolerance that allows something upwards: every resonance lifts a little';
    const ratio = Math.sqrt(1 - 1 / (1 + tolerance.high));
    return `a mounted resonance of at least ${Math.ceil(worst.frequency / ratio / 100) / 10} kHz, or the band to end lower`;
  }
  return `corners that keep ${(100 * (1 + tolerance.low)).toFixed(1)} % at ${Number(worst.frequency.toPrecision(4))} Hz`;
}
