import { kinds } from '../../quantity/kinds.ts';
import { delay } from './delay.ts';
import { gainRatio } from './gain-ratio.ts';
import type { IdentifyKind } from './identify-kind.ts';
import { mountedResonance } from './mounted-resonance.ts';
import { noiseRatio } from './noise-floor.ts';
import { quality } from './quality.ts';

/**
 * Everything of an installed chain that recordings tell. Corners and clip levels join once their intervals hold what was
 * put in as often as they say.
 */
export const identifyKinds: readonly IdentifyKind[] = kinds(mountedResonance, quality, gainRatio, noiseRatio, delay);
