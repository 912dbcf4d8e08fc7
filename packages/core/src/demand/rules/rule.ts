import type { Finding } from '../../finding/finding.ts';
import { type Found, foundBy, type RuleText } from '../../finding/rule-text.ts';
import type { Level, Motion, Stated } from '../../quantity/index.ts';
import type { MeasuringPoint } from '../measuring-point.ts';
import type { PointStatement } from '../statement.ts';

/** A point as it is stated, with its words and units, and the same with its frequencies put in numbers. */
export interface StatedPoint {
  readonly statement: PointStatement;
  readonly point: MeasuringPoint;
}

/** The limits an owner gives a machine, as they are stated. */
export interface StatedLimits {
  readonly at: string;
  readonly aB: Stated<Level<Motion>>;
  readonly bC: Stated<Level<Motion>>;
  readonly cD: Stated<Level<Motion>>;
}

interface DemandRuleText<Subject> extends RuleText {
  /** A statement that passes, and one that does not. */
  readonly valid: Subject;
  readonly invalid: Subject;
}

/** One check of what is demanded: it asks where a statement contradicts itself or was probably meant otherwise. */
export interface DemandRule<Subject> extends DemandRuleText<Subject> {
  check(subject: Subject): readonly Finding[];
}

export function demandRule<Subject>(
  definition: DemandRuleText<Subject> & { finds(subject: Subject): readonly Found[] },
): DemandRule<Subject> {
  const { finds, ...text } = definition;
  return { ...text, check: (subject) => foundBy(text, finds(subject)) };
}
