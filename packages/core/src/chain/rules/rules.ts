import { barrierEarth } from './barrier-earth.ts';
import { barrierVoltage } from './barrier-voltage.ts';
import { biasWindow } from './bias-window.ts';
import { bracket } from './bracket.ts';
import { cableDrive } from './cable-drive.ts';
import { cableTemperature } from './cable-temperature.ts';
import { caseGrounding } from './case-grounding.ts';
import { chemicals } from './chemicals.ts';
import { connectorTemperature } from './connector-temperature.ts';
import { converterTemperature } from './converter-temperature.ts';
import { detectedQuantity } from './detected-quantity.ts';
import { immersionDepth } from './immersion-depth.ts';
import { loopLoad } from './loop-load.ts';
import { loopRange } from './loop-range.ts';
import { magnetHolds } from './magnet-holds.ts';
import { massLoading } from './mass-loading.ts';
import { matchedSet } from './matched-set.ts';
import { mountPreparation } from './mount-preparation.ts';
import { oneNumber } from './one-number.ts';
import { overload } from './overload.ts';
import { passesRest } from './passes-rest.ts';
import { portsMeet } from './ports-meet.ts';
import { probeClearance } from './probe-clearance.ts';
import { rangeAsPeak } from './range-as-peak.ts';
import { reference } from './reference.ts';
import { response } from './response.ts';
import type { Rule } from './rule.ts';
import { sealing } from './sealing.ts';
import { sensitivityTolerance } from './sensitivity-tolerance.ts';
import { shaftDiameter } from './shaft-diameter.ts';
import { signalToNoise } from './signal-to-noise.ts';
import { strayField } from './stray-field.ts';
import { surfaceSpeed } from './surface-speed.ts';
import { targetMaterial } from './target-material.ts';
import { temperature } from './temperature.ts';
import { tilt } from './tilt.ts';
import { travelAndPosition } from './travel-and-position.ts';
import { usableFrequency } from './usable-frequency.ts';
import { waterJets } from './water-jets.ts';
import { zeroError } from './zero-error.ts';

/** Every rule of the chain, in the order in which a reason is best read. */
export const chainRules: readonly Rule[] = [
  portsMeet,
  reference,
  oneNumber,
  detectedQuantity,
  temperature,
  connectorTemperature,
  cableTemperature,
  converterTemperature,
  sealing,
  waterJets,
  immersionDepth,
  chemicals,
  strayField,
  caseGrounding,
  massLoading,
  mountPreparation,
  bracket,
  magnetHolds,
  tilt,
  surfaceSpeed,
  matchedSet,
  shaftDiameter,
  probeClearance,
  targetMaterial,
  usableFrequency,
  response,
  passesRest,
  signalToNoise,
  zeroError,
  overload,
  travelAndPosition,
  rangeAsPeak,
  biasWindow,
  barrierVoltage,
  barrierEarth,
  cableDrive,
  loopRange,
  loopLoad,
  sensitivityTolerance,
];
