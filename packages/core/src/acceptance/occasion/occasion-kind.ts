import type { Fields, Sheet } from '../../quantity/index.ts';

/** On what occasion a record was made: what was done to the machine and the chain while it ran. */
export interface OccasionKind<Kind extends string = string, F extends Fields = Fields> {
  readonly kind: Kind;
  readonly name: string;
  /** How such a record is made, in one sentence for the person at the machine. */
  readonly how: string;
  /** What must be written down of it, beside what the recording says. */
  readonly dataSheet: F;
  /** Whether the shaft turns meanwhile. */
  readonly turning: boolean;
}

/** An occasion as it stands in a records file. */
export interface OccasionOf<Kind extends OccasionKind = OccasionKind> {
  readonly kind: Kind['kind'];
  readonly sheet: Sheet<Kind['dataSheet']>;
}

export function occasionKind<const Kind extends string, const F extends Fields>(
  definition: OccasionKind<Kind, F>,
): OccasionKind<Kind, F> {
  return definition;
}
