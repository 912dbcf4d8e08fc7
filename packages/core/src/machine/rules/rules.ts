import { aboveRatedFrequency } from './above-rated-frequency.ts';
import { bearingGeometryEstimated } from './bearing-geometry-estimated.ts';
import { beltLengthPossible } from './belt-length-possible.ts';
import { beltRatioAgainstDiameters } from './belt-ratio-against-diameters.ts';
import { beltSlipNotStated } from './belt-slip-not-stated.ts';
import { carrierAboveLine } from './carrier-above-line.ts';
import { commonFactor } from './common-factor.ts';
import { contactAnglePlausible } from './contact-angle-plausible.ts';
import { creepNotStated } from './creep-not-stated.ts';
import { elementAgainstPitch } from './element-against-pitch.ts';
import { elementsFitPitchCircle } from './elements-fit-pitch-circle.ts';
import { hertzForRevolutions } from './hertz-for-revolutions.ts';
import { lineFrequencyInRevolutions } from './line-frequency-in-revolutions.ts';
import { loadOfBearing } from './load-of-bearing.ts';
import { modeInRange } from './mode-in-range.ts';
import { pitchBetweenBoreAndOutside } from './pitch-between-bore-and-outside.ts';
import { planetaryExchanged } from './planetary-exchanged.ts';
import { planetaryGeometry } from './planetary-geometry.ts';
import { planetaryRatio } from './planetary-ratio.ts';
import { planetsAssemble } from './planets-assemble.ts';
import { plateAgainstTrain } from './plate-against-train.ts';
import { polesAgainstSpeed } from './poles-against-speed.ts';
import { polesEven } from './poles-even.ts';
import { ratedSlipAgainstSpeed } from './rated-slip-against-speed.ts';
import { ratioAgainstTeeth } from './ratio-against-teeth.ts';
import { relationsAgree } from './relations-agree.ts';
import { rowsCountedTwice } from './rows-counted-twice.ts';
import type { MachineRule } from './rule.ts';
import { shaftReached } from './shaft-reached.ts';
import { slipAboveZero } from './slip-above-zero.ts';
import { stateInsideRange } from './state-inside-range.ts';
import { synchronousSpeedAgainstPoles } from './synchronous-speed-against-poles.ts';
import { throwPlausible } from './throw-plausible.ts';
import { toothedLoopPossible } from './toothed-loop-possible.ts';
import type { TrainRule } from './train-rule.ts';
import { wormRatio } from './worm-ratio.ts';

/** Rules that look at a whole train. Those of one kind of element are named in the file of that kind. */
export const trainRules: readonly TrainRule[] = [
  relationsAgree,
  shaftReached,
  hertzForRevolutions,
  plateAgainstTrain,
  stateInsideRange,
  aboveRatedFrequency,
  lineFrequencyInRevolutions,
  polesEven,
  carrierAboveLine,
  loadOfBearing,
  modeInRange,
  planetaryExchanged,
];

/** Every rule of the room, whatever it looks at: for help, pages and completeness. */
// biome-ignore lint/suspicious/noExplicitAny: rules of unlike subjects have no other common type
export const machineRules: readonly MachineRule<any>[] = [
  ...trainRules,
  polesAgainstSpeed,
  slipAboveZero,
  ratedSlipAgainstSpeed,
  synchronousSpeedAgainstPoles,
  ratioAgainstTeeth,
  commonFactor,
  beltRatioAgainstDiameters,
  beltLengthPossible,
  beltSlipNotStated,
  elementAgainstPitch,
  elementsFitPitchCircle,
  rowsCountedTwice,
  pitchBetweenBoreAndOutside,
  contactAnglePlausible,
  bearingGeometryEstimated,
  wormRatio,
  planetaryGeometry,
  planetsAssemble,
  planetaryRatio,
  toothedLoopPossible,
  creepNotStated,
  throwPlausible,
];
