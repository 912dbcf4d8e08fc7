import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { iepeAccelerometer } from './iepe-accelerometer.ts';
import { loopSensor } from './loop-sensor.ts';
import { movingCoil } from './moving-coil.ts';
import { piezoVelocity } from './piezo-velocity.ts';
import { proximitySystem } from './proximity-system.ts';

/** Every kind of transducer. */
export const transducerKinds = kinds(iepeAccelerometer, piezoVelocity, movingCoil, proximitySystem, loopSensor);
export type Transducer = {
  [K in (typeof transducerKinds)[number] as K['kind']]: Part<K>;
}[(typeof transducerKinds)[number]['kind']];
