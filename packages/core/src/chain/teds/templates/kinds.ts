import { kinds } from '../../../quantity/index.ts';
import { accelerometerForce } from './accelerometer-force.ts';
import { microphone } from './microphone.ts';
import { voltageOutput } from './voltage-output.ts';

/** Every template whose name at least is known. */
export const templateKinds = kinds(accelerometerForce, microphone, voltageOutput);
