import { biasWindowDerivation } from './bias-window.ts';
import { cableDriveDerivation } from './cable-drive.ts';
import { comparison } from './comparison.ts';
import type { Derivation, Derive, Judged } from './derivation.ts';
import { loopLoadDerivation } from './loop-load.ts';
import { loopRangeDerivation } from './loop-range.ts';
import { overloadDerivation } from './overload.ts';
import { responseDerivation } from './response.ts';
import { signalToNoiseDerivation } from './signal-to-noise.ts';
import { usableFrequencyDerivation } from './usable-frequency.ts';
import { zeroErrorDerivation } from './zero-error.ts';

/** How the number of each rule comes about. A rule that is not here asks yes or no, and is shown as it compares. */
export const derivations: Readonly<Record<string, Derive>> = {
  'chain/response': responseDerivation,
  'chain/signal-to-noise': signalToNoiseDerivation,
  'chain/overload': overloadDerivation,
  'chain/bias-window': biasWindowDerivation,
  'chain/cable-drive': cableDriveDerivation,
  'chain/loop-load': loopLoadDerivation,
  'chain/loop-range': loopRangeDerivation,
  'chain/zero-error': zeroErrorDerivation,
  'chain/usable-frequency': usableFrequencyDerivation,
};

export function derivationOf(judged: Judged): readonly Derivation[] {
  return (derivations[judged.judgement.rule] ?? comparison)(judged);
}
