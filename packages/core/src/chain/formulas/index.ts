import type { AnyWorking } from '../../working/index.ts';
import { countsScaling } from './counts-scaling.ts';
import { dischargeCornerWorking } from './discharge-corner.ts';
import { iepeCableDrive } from './iepe-cable-drive.ts';
import { iepeHeadroom } from './iepe-headroom.ts';
import { loopLoad } from './loop-load.ts';
import { loopScaling } from './loop-scaling.ts';
import { mountedResonanceWorking } from './mounted-resonance.ts';
import { mountedResponse } from './mounted-response.ts';
import { noiseInBand } from './noise.ts';

export * from './counts-scaling.ts';
export * from './discharge-corner.ts';
export * from './iepe-cable-drive.ts';
export * from './iepe-headroom.ts';
export * from './loop-load.ts';
export * from './loop-scaling.ts';
export * from './loop-state.ts';
export * from './mounted-resonance.ts';
export * from './mounted-response.ts';
export * from './noise.ts';

/** The formulas of the measuring chain, from the mount to the counts of the card. */
export const chainWorkings: readonly AnyWorking[] = [
  mountedResonanceWorking,
  mountedResponse,
  iepeCableDrive,
  iepeHeadroom,
  dischargeCornerWorking,
  noiseInBand,
  loopScaling,
  loopLoad,
  countsScaling,
];
