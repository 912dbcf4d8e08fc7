import type { AnyWorking } from '../../working/index.ts';
import { bracketFirstModeWorking } from './bracket-first-mode.ts';
import { chargeConverter } from './charge-converter.ts';
import { countsScaling } from './counts-scaling.ts';
import { dischargeCornerWorking } from './discharge-corner.ts';
import { iepeCableDrive } from './iepe-cable-drive.ts';
import { iepeHeadroom } from './iepe-headroom.ts';
import { leakRate } from './leak-rate.ts';
import { loopLoad } from './loop-load.ts';
import { loopScaling } from './loop-scaling.ts';
import { magnetHolding } from './magnet-holding.ts';
import { massLoadingWorking } from './mass-loading.ts';
import { mountedResonanceWorking } from './mounted-resonance.ts';
import { mountedResponse } from './mounted-response.ts';
import { movingCoilResponse } from './moving-coil-response.ts';
import { noiseInBand } from './noise.ts';
import { proximityGap } from './proximity-gap.ts';
import { sMax } from './s-max.ts';
import { tiltGravity } from './tilt-gravity.ts';

export * from './bracket-first-mode.ts';
export * from './charge-converter.ts';
export * from './counts-scaling.ts';
export * from './discharge-corner.ts';
export * from './iepe-cable-drive.ts';
export * from './iepe-headroom.ts';
export * from './leak-gas.ts';
export * from './leak-rate.ts';
export * from './loop-load.ts';
export * from './loop-scaling.ts';
export * from './loop-state.ts';
export * from './magnet-holding.ts';
export * from './mass-loading.ts';
export * from './mounted-resonance.ts';
export * from './mounted-response.ts';
export * from './moving-coil-response.ts';
export * from './noise.ts';
export * from './orbit.ts';
export * from './proximity-gap.ts';
export * from './s-max.ts';
export * from './tilt-gravity.ts';

/** The formulas of the measuring chain, from the mount to the counts of the card. */
export const chainWorkings: readonly AnyWorking[] = [
  mountedResonanceWorking,
  mountedResponse,
  bracketFirstModeWorking,
  massLoadingWorking,
  magnetHolding,
  iepeCableDrive,
  iepeHeadroom,
  dischargeCornerWorking,
  noiseInBand,
  loopScaling,
  loopLoad,
  countsScaling,
  chargeConverter,
  movingCoilResponse,
  proximityGap,
  sMax,
  leakRate,
  tiltGravity,
];
