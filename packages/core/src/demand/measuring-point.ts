import type { Answer, Sheet, Stated, Temperature } from '../quantity/index.ts';
import type { hazardousAreaSheet } from './hazardous-area.ts';
import type { surroundingsSheet } from './surroundings.ts';
import type { Disturbance, Target } from './target.ts';

/** Whether the chain stays at the machine or is brought to it. */
export const installations = ['online', 'portable'] as const;
export type Installation = (typeof installations)[number];

/** A place on a machine, and everything that must be captured there. */
export interface MeasuringPoint {
  /** `P-301/pump/drive-end/horizontal`. */
  readonly of: string;
  readonly name: string;
  readonly machine: string;
  readonly location: string;
  readonly direction: Answer<string>;
  readonly installation: Installation;
  /** Temperature of the surface the transducer stands on, at its hottest. */
  readonly surfaceTemperature: Stated<Temperature>;
  readonly surroundings: Sheet<typeof surroundingsSheet>;
  /** The hazardous area it lies in; absent where it lies in none. */
  readonly area?: Sheet<typeof hazardousAreaSheet>;
  /** Elements and shafts it is there to listen to; all of the machine where left out. */
  readonly hears?: readonly string[];
  readonly targets: readonly Target[];
  readonly disturbances: readonly Disturbance[];
}
