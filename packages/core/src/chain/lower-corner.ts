import { type Answer, fromAll } from '../quantity/index.ts';
import { magnitude } from '../signal/complex.ts';
import type { Prediction } from './prediction.ts';
import { transfer } from './stage.ts';

/** The lower −3 dB corner of the transducer alone in hertz, by bisection below 1 kHz; 0 where it passes direct voltage. */
export function lowerCornerOfTransducer({ chain: { transducer } }: Prediction): Answer<number> {
  return fromAll({ stages: transducer.stages, sensitivity: transducer.sensitivity }, ({ stages, sensitivity }) => {
    const gain = (frequency: number) => magnitude(transfer(stages, frequency)) / sensitivity;
    let [low, high] = [1e-4, 1e3];
    if (gain(low) > Math.SQRT1_2) return 0;
    for (let step = 0; step < 60; step++) {
      const middle = Math.sqrt(low * high);
      if (gain(middle) < Math.SQRT1_2) low = middle;
      else high = middle;
    }
    return high;
  });
}
