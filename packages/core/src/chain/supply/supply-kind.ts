import type { Answer, Fields, Sheet, Span } from '../../quantity/index.ts';
import type { PartKind } from '../part-kind.ts';

/** What stands in the line and only costs voltage: a supply's tolerance, an indicator, a barrier. */
export interface SupplyModel {
  readonly of: string;
  readonly voltage: Answer<Span<'voltage'>> | undefined;
  readonly resistance: Answer<number> | undefined;
}

/** A kind of supply or series element: one file, one line in `kinds.ts`. */
export interface SupplyKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  model(sheet: Sheet<F>): SupplyModel;
}

export function supplyKind<const Kind extends string, F extends Fields>(
  definition: SupplyKind<Kind, F>,
): SupplyKind<Kind, F> {
  return definition;
}
