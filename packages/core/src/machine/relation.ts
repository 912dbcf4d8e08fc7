import type { Fraction } from '../quantity/index.ts';
import { type Exact, exactFactor } from './form.ts';

/** One shaft in an equation, by the role it plays at the element. */
export interface RelationTerm<Role extends string = string> {
  readonly role: Role;
  readonly times: Fraction;
}

/**
 * A linear equation among the speeds of the shafts at an element: 0 = Σ times · speed. Speeds carry their sense of
 * rotation, coefficients are exact.
 */
export interface SpeedRelation<Role extends string = string> {
  /** The equation in words, for a question about it: `24 teeth drive 84`. */
  readonly words: string;
  readonly terms: readonly RelationTerm<Role>[];
  /** The same equation at both ends of what it leaves open, for a belt that slips. */
  readonly loosely?: { readonly low: readonly RelationTerm<Role>[]; readonly high: readonly RelationTerm<Role>[] };
}

/** 0 = Σ times · speed from pairs of role and exact factor. */
export function equation<const Role extends string>(
  ...terms: readonly (readonly [Role, Exact])[]
): readonly RelationTerm<Role>[] {
  return terms.map(([role, factor]) => ({ role, times: exactFactor(factor) }));
}
