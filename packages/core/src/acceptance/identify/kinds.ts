import { kinds } from '../../quantity/kinds.ts';
import { clipLevels } from './clip-levels.ts';
import { delay } from './delay.ts';
import { gainRatio } from './gain-ratio.ts';
import type { IdentifyKind } from './identify-kind.ts';
import { lowCorner } from './low-corner.ts';
import { mountedResonance } from './mounted-resonance.ts';
import { noiseRatio } from './noise-floor.ts';
import { quality } from './quality.ts';
import { upperCorner } from './upper-corner.ts';

/** Everything of an installed chain that recordings tell. */
export const identifyKinds: readonly IdentifyKind[] = kinds(
  lowCorner,
  upperCorner,
  mountedResonance,
  quality,
  gainRatio,
  noiseRatio,
  clipLevels,
  delay,
);
