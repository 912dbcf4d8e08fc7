import { kinds } from '../../quantity/kinds.ts';
import { bias } from './bias.ts';
import type { CheckKind } from './check-kind.ts';
import { clipping } from './clipping.ts';
import { mainsHum } from './mains-hum.ts';
import { noiseFloor } from './noise-floor.ts';
import { resonance } from './resonance.ts';
import { settling } from './settling.ts';
import { skiSlope } from './ski-slope.ts';
import { slew } from './slew.ts';
import { tapPlace } from './tap-place.ts';
import { tapPolarity } from './tap-polarity.ts';

/** Every check of a commissioning, in the order in which they are made. */
export const checkKinds: readonly CheckKind[] = kinds(
  bias,
  settling,
  noiseFloor,
  mainsHum,
  skiSlope,
  tapPlace,
  resonance,
  tapPolarity,
  clipping,
  slew,
);
