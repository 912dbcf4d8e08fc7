import type { Stage } from '../chain/stage.ts';
import { type Motion, motionOrder } from '../quantity/index.ts';
import { type Complex, complex, product } from '../signal/complex.ts';
import { rowTransfer } from './chain-split.ts';

/** From one motion to the source: differentiated or integrated to what is sensed, then through the stages. */
export function sensed(from: Motion, to: Motion, stages: readonly Stage[]): (frequency: number) => Complex {
  const row = rowTransfer(stages);
  const order = motionOrder[to] - motionOrder[from];
  return (frequency) => product(toTheOrder(complex(0, 2 * Math.PI * frequency), order), row(frequency));
}

export function toTheOrder(base: Complex, order: number): Complex {
  if (order === 0) return complex(1, 0);
  const magnitude = base.im ** order;
  const quarter = ((order % 4) + 4) % 4;
  const turned = [complex(magnitude, 0), complex(0, magnitude), complex(-magnitude, 0), complex(0, -magnitude)];
  return turned[quarter] ?? complex(0, 0);
}
