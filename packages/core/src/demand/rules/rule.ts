import type { Finding } from '../../finding/finding.ts';
import type { Level, Motion, Stated } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
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

/** What a rule finds; whose rule it is, and on whose word, stands in the rule. */
export type Found = Omit<Finding, 'rule' | 'sources'>;

interface RuleText<Subject> {
  /** `demand/levels-in-order`. */
  readonly id: string;
  readonly title: string;
  /** What it asks and why, in plain words. */
  readonly prose: string;
  readonly sources: readonly Clause[];
  /** A statement that passes, and one that does not. */
  readonly valid: Subject;
  readonly invalid: Subject;
}

/** One check of what is demanded: it asks where a statement contradicts itself or was probably meant otherwise. */
export interface DemandRule<Subject> extends RuleText<Subject> {
  check(subject: Subject): readonly Finding[];
}

export function demandRule<Subject>(
  definition: RuleText<Subject> & { finds(subject: Subject): readonly Found[] },
): DemandRule<Subject> {
  const { finds, ...text } = definition;
  return {
    ...text,
    check: (subject) => finds(subject).map((found) => ({ rule: text.id, ...found, sources: text.sources })),
  };
}
