import { biasWindow } from './bias-window.ts';
import { cableDrive } from './cable-drive.ts';
import { cableTemperature } from './cable-temperature.ts';
import { detectedQuantity } from './detected-quantity.ts';
import { loopLoad } from './loop-load.ts';
import { loopRange } from './loop-range.ts';
import { oneNumber } from './one-number.ts';
import { overload } from './overload.ts';
import { passesRest } from './passes-rest.ts';
import { portsMeet } from './ports-meet.ts';
import { rangeAsPeak } from './range-as-peak.ts';
import { reference } from './reference.ts';
import { response } from './response.ts';
import type { Rule } from './rule.ts';
import { sensitivityTolerance } from './sensitivity-tolerance.ts';
import { signalToNoise } from './signal-to-noise.ts';
import { temperature } from './temperature.ts';
import { usableFrequency } from './usable-frequency.ts';
import { zeroError } from './zero-error.ts';

/** Every rule of the chain, in the order in which a reason is best read. */
export const chainRules: readonly Rule[] = [
  portsMeet,
  reference,
  oneNumber,
  detectedQuantity,
  temperature,
  cableTemperature,
  usableFrequency,
  response,
  passesRest,
  signalToNoise,
  zeroError,
  overload,
  rangeAsPeak,
  biasWindow,
  cableDrive,
  loopRange,
  loopLoad,
  sensitivityTolerance,
];
