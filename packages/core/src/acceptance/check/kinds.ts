import { kinds } from '../../quantity/kinds.ts';
import { aliasing } from './aliasing.ts';
import { bias } from './bias.ts';
import type { CheckKind } from './check-kind.ts';
import { clipping } from './clipping.ts';
import { crossTalk } from './cross-talk.ts';
import { gap } from './gap.ts';
import { loopCeiling } from './loop-ceiling.ts';
import { loopScale } from './loop-scale.ts';
import { looseMount } from './loose-mount.ts';
import { machineFaults } from './machine-faults.ts';
import { mainsHum } from './mains-hum.ts';
import { noiseFloor } from './noise-floor.ts';
import { orbitDirection } from './orbit-direction.ts';
import { probeCurveCheck } from './probe-curve.ts';
import { recordedSpeed } from './recorded-speed.ts';
import { recorderSensitivity } from './recorder-sensitivity.ts';
import { referencePhase } from './reference-phase.ts';
import { resonance } from './resonance.ts';
import { runOut } from './run-out.ts';
import { sensitivity } from './sensitivity.ts';
import { settling } from './settling.ts';
import { skiSlope } from './ski-slope.ts';
import { slew } from './slew.ts';
import { tapPlace } from './tap-place.ts';
import { tapPolarity } from './tap-polarity.ts';

/** Every check of a commissioning, in the order in which they are made. */
export const checkKinds: readonly CheckKind[] = kinds(
  bias,
  settling,
  recorderSensitivity,
  gap,
  probeCurveCheck,
  noiseFloor,
  mainsHum,
  skiSlope,
  tapPlace,
  resonance,
  tapPolarity,
  sensitivity,
  referencePhase,
  loopScale,
  runOut,
  clipping,
  slew,
  loopCeiling,
  crossTalk,
  recordedSpeed,
  aliasing,
  orbitDirection,
  looseMount,
  machineFaults,
);
