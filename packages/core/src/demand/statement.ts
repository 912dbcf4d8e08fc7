import type { Level, Motion, Quantity, Sheet, Span, Stated, Temperature, Tolerance } from '../quantity/index.ts';
import type { FrequencyReference } from './frequency-reference.ts';
import type { hazardousAreaSheet } from './hazardous-area.ts';
import type { Installation } from './measuring-point.ts';
import type { Observable } from './observables/observable.ts';
import type { surroundingsSheet } from './surroundings.ts';
import type { Origin, Reference } from './target.ts';

/** A detection target as it is stated, its frequencies still named after the machine. */
export interface TargetStatement {
  readonly name: string;
  readonly cause: string;
  readonly observe: Observable;
  readonly reference: Reference;
  /** For a line. */
  readonly frequency?: Stated<FrequencyReference>;
  /** For an overall value or a burst. */
  readonly band?: Stated<Span<'frequency'>>;
  /** What an overall value is made of: there its response is judged. */
  readonly components?: readonly Stated<FrequencyReference>[];
  readonly smallest: Stated<Level<Motion>>;
  readonly largest: Stated<Level<Motion>>;
  /** Where the largest level lies. */
  readonly largestAt?: Stated<FrequencyReference>;
  readonly tolerance: Stated<Tolerance>;
  readonly resolution?: Stated<Quantity<'frequency'>>;
  readonly weight: 'essential' | 'desirable';
  readonly within?: string;
  readonly origin: Origin;
}

export interface DisturbanceStatement {
  readonly name: string;
  readonly level: Stated<Level<Motion>>;
  readonly band?: Stated<Span<'frequency'>>;
}

/** A measuring point as it is stated. */
export interface PointStatement {
  readonly name: string;
  readonly location: Stated<string>;
  readonly direction: Stated<string>;
  readonly installation: Installation;
  readonly surfaceTemperature: Stated<Temperature>;
  readonly surroundings: Sheet<typeof surroundingsSheet>;
  /** Where it lies in a hazardous area. */
  readonly area?: Sheet<typeof hazardousAreaSheet>;
  /** Elements and shafts it is there to listen to; all of the machine where nothing is said. */
  readonly hears?: readonly string[];
  readonly targets: readonly TargetStatement[];
  readonly disturbances: readonly DisturbanceStatement[];
}
