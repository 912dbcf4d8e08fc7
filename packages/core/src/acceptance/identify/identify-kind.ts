import type { MeasuredFacts } from '../../chain/index.ts';
import type { DesignedPoint } from '../../design/design.ts';
import type { Said } from '../../finding/measure.ts';
import type { QuantityName } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import type { OccasionName } from '../occasion/kinds.ts';

/** From here to there, in the unit of what it speaks of. */
export interface Within {
  readonly low: number;
  readonly high: number;
}

/** One property of an installed chain as a record tells it. */
export interface FoundOfChain {
  /** Which of several: `upper rail`. */
  readonly of?: string;
  readonly quantity: QuantityName;
  readonly value: number;
  /** Within which the true value lies with 95 %. */
  readonly interval: Within;
  /** What the design expects, and within which limits a chain is still as designed. */
  readonly predicted: number;
  readonly allowed: Within;
  readonly tolerance: Said;
  /** The part of the chain it belongs to, as the stages name theirs. */
  readonly part: string;
  /** What of it takes the place of the predicted in the design; nothing where the prediction has no place for it. */
  readonly facts?: MeasuredFacts;
}

/** A property of a chain that recordings tell: one file, one line in `kinds.ts`. */
export interface IdentifyKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly title: string;
  readonly on: readonly OccasionName[];
  applies(designed: DesignedPoint): boolean;
  /** Empty where the record does not show it. */
  identify(looked: CheckedRecord): readonly FoundOfChain[];
}

export function identifyKind<const Kind extends string>(definition: IdentifyKind<Kind>): IdentifyKind<Kind> {
  return definition;
}

/** Normal deviate of 95 %. */
export const twoSided = 1.96;
