import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { capacitiveDc } from './capacitive-dc.ts';
import { chargeAccelerometer } from './charge-accelerometer.ts';
import { dualOutput } from './dual-output.ts';
import { iepeAccelerometer } from './iepe-accelerometer.ts';
import { loopSensor } from './loop-sensor.ts';
import { lowFrequencyVelocity } from './low-frequency-velocity.ts';
import { lvdt } from './lvdt.ts';
import { movingCoil } from './moving-coil.ts';
import { piezoVelocity } from './piezo-velocity.ts';
import { proximitySystem } from './proximity-system.ts';
import { shaftRider } from './shaft-rider.ts';

/** Every kind of transducer. */
export const transducerKinds = kinds(
  iepeAccelerometer,
  chargeAccelerometer,
  capacitiveDc,
  piezoVelocity,
  movingCoil,
  lowFrequencyVelocity,
  proximitySystem,
  lvdt,
  shaftRider,
  loopSensor,
  dualOutput,
);
export type Transducer = {
  [K in (typeof transducerKinds)[number] as K['kind']]: Part<K>;
}[(typeof transducerKinds)[number]['kind']];
