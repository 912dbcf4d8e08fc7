import { type Said, said } from '../finding/measure.ts';
import { Refusal } from '../quantity/index.ts';
import { coverageFactor, degreesOfFreedomFromReliability, requireDegreesOfFreedom } from './coverage.ts';
import type { DegreesOfFreedom, Distribution, Spread, StatedWidth } from './distribution/distribution.ts';
import { statedWidths } from './distribution/distribution.ts';
import { type DistributionName, distributionNamed } from './distribution/distributions.ts';

/** Whether an input errs either way, or only one: noise only adds to a reading. */
export const leanings = ['both', 'upward', 'downward'] as const;
export type Leaning = (typeof leanings)[number];

/** A width that follows from other numbers: its formula, and the same with the numbers put in. */
export interface Derived {
  readonly formula: string;
  readonly substituted: Said;
}

/** What is known of one input, as a certificate or data sheet states it; exactly one width, or the readings. */
export interface ContributionStatement {
  readonly name: string;
  /** What is said behind the name, with its numbers. */
  readonly detail?: Said;
  /** How its width came about where it was computed, the numbers put in: `a = 5 % · 1 = 5 %`. */
  readonly derived?: Derived;
  /** The estimate; zero where only its scatter matters, as in a budget of relative terms. */
  readonly value?: number;
  /** A label; nothing is converted. */
  readonly unit?: string;
  /** Where it comes from: a certificate number, a data sheet, a judgement. */
  readonly source?: string;
  readonly distribution?: DistributionName;
  readonly standardUncertainty?: number;
  /** Half of the interval within which it certainly lies. */
  readonly halfWidth?: number;
  /** Expanded uncertainty U, with its coverage factor `k` or its level of confidence. */
  readonly expanded?: number;
  readonly k?: number;
  readonly confidence?: number;
  /** One step of the last digit. */
  readonly resolution?: number;
  /** Half-width by which the ends of a curvilinear trapezoid are uncertain. */
  readonly inexactness?: number;
  /** Repeated readings: the mean is the estimate, s/√n its standard uncertainty, n − 1 its degrees of freedom. */
  readonly readings?: readonly number[];
  readonly degreesOfFreedom?: DegreesOfFreedom;
  /** Relative uncertainty of the standard uncertainty, instead of degrees of freedom. */
  readonly reliability?: number;
  readonly direction?: Leaning;
}

/**
 * One independent input of a measurement. It is its own identity: two quantities that came from this very record are
 * correlated through it, two records that look alike are not.
 */
export interface Contribution extends Spread {
  readonly name: string;
  readonly detail?: Said;
  readonly derived?: Derived;
  readonly estimate: number;
  readonly unit?: string;
  readonly source?: string;
  readonly distribution: DistributionName;
  /** Whether the distribution was stated, or follows from the kind of width. */
  readonly distributionStated: boolean;
  readonly direction: Leaning;
  /** As it was stated, and by what that is divided to give the standard uncertainty. */
  readonly stated: { readonly by: StatedWidth | 'readings'; readonly value: number; readonly divisor: number };
}

/**
 * The input that a statement describes. Standard uncertainty: as stated; U/k; a/√3, a/√6, a/√2 for rectangular,
 * triangular, U-shaped; r/√12 for a resolution; s/√n for readings. Source: JCGM 100, 4.2 and 4.3. Throws Refusal.
 */
export function contribution(statement: ContributionStatement): Contribution {
  const common = {
    name: statement.name,
    ...(statement.detail === undefined ? {} : { detail: statement.detail }),
    ...(statement.derived === undefined ? {} : { derived: statement.derived }),
    ...(statement.unit === undefined ? {} : { unit: statement.unit }),
    ...(statement.source === undefined ? {} : { source: statement.source }),
    direction: statement.direction ?? 'both',
  };
  const by = statedWidth(statement);
  if (by === 'readings') return { ...common, ...fromReadings(statement) };
  const value = finite(statement, by);
  if (value < 0) throw refusal(statement, `${by} of ${value}`, 'a width of zero or more');
  const shape = shapeOf(statement, by);
  const degreesOfFreedom = degreesOfFreedomOf(statement);
  if (shape.needsDegreesOfFreedom === true && degreesOfFreedom === 'infinite') {
    throw refusal(statement, `a ${shape.kind} without degrees of freedom`, 'degrees-of-freedom (readings less one)');
  }
  const divisor = divisorOf(statement, by, shape, degreesOfFreedom);
  const inexactness = inexactnessOf(statement, shape);
  const standardUncertainty = Math.hypot(value / divisor, by === 'half-width' ? inexactness / 3 : 0);
  if (inexactness > 0 && standardUncertainty ** 2 < (4 / 9) * inexactness ** 2 * (1 - 1e-12)) {
    throw refusal(statement, `an inexactness of ${inexactness}`, 'an inexactness not above the half-width');
  }
  return {
    ...common,
    estimate: statement.value === undefined ? 0 : requireFinite(statement, 'value', statement.value),
    distribution: shape.kind,
    distributionStated: statement.distribution !== undefined,
    standardUncertainty,
    degreesOfFreedom,
    inexactness,
    stated: { by, value, divisor },
  };
}

/** What a contribution is called where it is read, with its numbers in the units of the reader. */
export function contributionTitle({ name, detail }: Pick<Contribution, 'name' | 'detail'>): Said {
  return detail === undefined ? name : said`${name}, ${detail}`;
}

const keyOf = {
  'standard-uncertainty': 'standardUncertainty',
  'half-width': 'halfWidth',
  expanded: 'expanded',
  resolution: 'resolution',
  readings: 'readings',
} as const;

function statedWidth(statement: ContributionStatement): StatedWidth | 'readings' {
  const stated = [...statedWidths, 'readings' as const].filter((each) => statement[keyOf[each]] !== undefined);
  if (stated.length === 1) return stated[0]!;
  const read = stated.length === 0 ? 'no uncertainty' : stated.join(' and ');
  const exact = "write 'standard-uncertainty: 0' for an exact number";
  throw refusal(statement, read, `exactly one of ${[...statedWidths, 'readings'].join(', ')}`, exact);
}

function shapeOf(statement: ContributionStatement, by: StatedWidth): Distribution<DistributionName> {
  const implied = by === 'resolution' ? 'resolution' : by === 'half-width' ? undefined : 'normal';
  const name = statement.distribution ?? implied;
  if (name === undefined) {
    throw refusal(statement, 'a half-width alone', "its distribution: 'rectangular' where nothing more is known");
  }
  const shape = distributionNamed(name);
  if (!shape.statedBy.includes(by)) {
    throw refusal(statement, `${by} of a ${shape.kind} distribution`, `its ${shape.statedBy.join(' or ')}`);
  }
  return shape;
}

function divisorOf(
  statement: ContributionStatement,
  by: StatedWidth,
  shape: Distribution,
  degreesOfFreedom: DegreesOfFreedom,
): number {
  const { k, confidence } = statement;
  if (by !== 'expanded') {
    if (k !== undefined || confidence !== undefined) {
      throw refusal(statement, k !== undefined ? 'k' : 'confidence', `'expanded' beside it, not ${by}`);
    }
    return by === 'standard-uncertainty' ? 1 : shape.divisor!;
  }
  if ((k === undefined) === (confidence === undefined)) {
    throw refusal(statement, 'an expanded uncertainty', "either its coverage factor 'k' or its 'confidence'");
  }
  if (confidence !== undefined) return coverageFactor(confidence, degreesOfFreedom);
  if (!(k! > 0 && Number.isFinite(k))) throw refusal(statement, `k of ${k}`, 'a coverage factor above zero, such as 2');
  return k!;
}

function inexactnessOf(statement: ContributionStatement, shape: Distribution): number {
  const { inexactness } = statement;
  if (shape.inexactEnds === true) {
    if (inexactness !== undefined && inexactness >= 0 && Number.isFinite(inexactness)) return inexactness;
    throw refusal(statement, `a ${shape.kind}`, 'its inexactness: the half-width by which its ends are uncertain');
  }
  if (inexactness === undefined) return 0;
  throw refusal(statement, `inexactness of a ${shape.kind} distribution`, 'none, or a curvilinear-trapezoid');
}

function degreesOfFreedomOf(statement: ContributionStatement): DegreesOfFreedom {
  const { degreesOfFreedom, reliability } = statement;
  if (degreesOfFreedom !== undefined && reliability !== undefined) {
    throw refusal(statement, 'degrees-of-freedom and reliability', 'one of them; each follows from the other');
  }
  if (reliability !== undefined) return degreesOfFreedomFromReliability(reliability);
  requireDegreesOfFreedom(degreesOfFreedom ?? 'infinite');
  return degreesOfFreedom ?? 'infinite';
}

function fromReadings(statement: ContributionStatement) {
  const single = [
    'value',
    'distribution',
    'k',
    'confidence',
    'inexactness',
    'degreesOfFreedom',
    'reliability',
  ] as const;
  const stray = single.find((key) => statement[key] !== undefined);
  if (stray !== undefined) {
    throw refusal(statement, `${stray} beside readings`, 'the readings alone; they give it');
  }
  const readings = statement.readings!;
  const { mean, deviation } = meanAndDeviation(readings, statement.name);
  const divisor = Math.sqrt(readings.length);
  return {
    estimate: mean,
    distribution: 'student-t' as const,
    distributionStated: true,
    standardUncertainty: deviation / divisor,
    degreesOfFreedom: readings.length - 1,
    inexactness: 0,
    stated: { by: 'readings' as const, value: deviation, divisor },
  };
}

/** Mean and experimental standard deviation s = √(Σ(x − x̄)²/(n − 1)). Source: JCGM 100, 4.2.1 and 4.2.2. */
export function meanAndDeviation(readings: readonly number[], name = 'readings'): { mean: number; deviation: number } {
  const n = readings.length;
  const strange = readings.find((each) => !Number.isFinite(each));
  if (n < 2 || n > 100_000 || strange !== undefined) {
    throw new Refusal({
      read: `${name}: ${strange === undefined ? `${n} readings` : String(strange)}`,
      expected: 'two or more readings, plain finite numbers, at most 100000 of them',
    });
  }
  const rough = readings.reduce((sum, each) => sum + each / n, 0);
  const mean = rough + readings.reduce((sum, each) => sum + (each - rough) / n, 0);
  const largest = readings.reduce((most, each) => Math.max(most, Math.abs(each - mean)), 0);
  if (largest === 0) return { mean, deviation: 0 };
  const squares = readings.reduce((sum, each) => sum + ((each - mean) / largest) ** 2, 0);
  return { mean, deviation: largest * Math.sqrt(squares / (n - 1)) };
}

function finite(statement: ContributionStatement, by: StatedWidth): number {
  return requireFinite(statement, by, statement[keyOf[by]] as number);
}

function requireFinite(statement: ContributionStatement, what: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw refusal(statement, `${what} of ${value}`, 'a finite number');
}

function refusal(statement: ContributionStatement, read: string, expected: string, hint?: string): Refusal {
  return new Refusal({
    read: `${statement.name}: ${read}`,
    expected,
    ...(hint === undefined ? {} : { suggestion: `${hint[0]!.toUpperCase()}${hint.slice(1)}.` }),
  });
}
