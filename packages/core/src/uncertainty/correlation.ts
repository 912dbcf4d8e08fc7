import { Refusal } from '../quantity/index.ts';
import type { Contribution } from './contribution.ts';

/** Two inputs that are known to move together: -1 ≤ r ≤ 1. */
export interface Correlation {
  readonly between: readonly [Contribution, Contribution];
  readonly coefficient: number;
  /** Present where it was computed from readings taken at the same moments. */
  readonly simultaneous?: true;
}

export type CorrelationMatrix = readonly (readonly number[])[];

/**
 * The correlation matrix of the inputs, in their order. Throws Refusal where a coefficient is out of range, given
 * twice, of an input with itself, or where no inputs could be correlated so all at once.
 */
export function correlationMatrix(
  inputs: readonly Contribution[],
  correlations: readonly Correlation[],
): CorrelationMatrix {
  const place = new Map(inputs.map((each, index) => [each, index]));
  const matrix: number[][] = inputs.map((_, row) => inputs.map((_, column) => (row === column ? 1 : 0)));
  const given = new Set<string>();
  for (const { between, coefficient } of correlations) {
    const [a, b] = between;
    const read = `correlation ${coefficient} between ${a.name} and ${b.name}`;
    if (!(coefficient >= -1 && coefficient <= 1)) {
      throw new Refusal({ read, expected: 'a correlation coefficient from -1 to 1' });
    }
    if (a === b) throw new Refusal({ read, expected: 'two different inputs; an input is always 1 with itself' });
    const i = place.get(a);
    const j = place.get(b);
    if (i === undefined || j === undefined) continue;
    const pair = `${Math.min(i, j)} ${Math.max(i, j)}`;
    if (given.has(pair)) throw new Refusal({ read, expected: 'each pair of inputs once' });
    given.add(pair);
    matrix[i]![j] = coefficient;
    matrix[j]![i] = coefficient;
  }
  choleskyFactor(matrix, inputs);
  return matrix;
}

/** Rests of the factorisation below this are rounding; a standard deviation is then known to 1e-5 of itself. */
const negligible = 1e-10;

/**
 * A factor L with L·Lᵀ the matrix, so that L times independent standard normal numbers is correlated as the matrix
 * says: Cholesky's, taking the largest remaining diagonal first. Full correlation is allowed and leaves columns of
 * zeros. Source: JCGM 101, 6.4.8 (from memory). Throws Refusal where no inputs could be correlated so.
 */
export function choleskyFactor(matrix: CorrelationMatrix, inputs: readonly Contribution[]): CorrelationMatrix {
  const rest = matrix.map((row) => [...row]);
  const factor: number[][] = matrix.map((row) => row.map(() => 0));
  const open = new Set(matrix.keys());
  for (let column = 0; open.size > 0; column++) {
    const pivot = [...open].reduce((best, i) => (rest[i]![i]! > rest[best]![best]! ? i : best));
    if (rest[pivot]![pivot]! < negligible) break;
    const root = Math.sqrt(rest[pivot]![pivot]!);
    open.delete(pivot);
    factor[pivot]![column] = root;
    for (const i of open) factor[i]![column] = rest[i]![pivot]! / root;
    for (const i of open) {
      for (const j of open) rest[i]![j]! -= factor[i]![column]! * factor[j]![column]!;
    }
  }
  for (const i of open) {
    for (const j of open) if (Math.abs(rest[i]![j]!) > 2 * negligible) throw impossible(matrix, inputs);
  }
  return factor;
}

function impossible(matrix: CorrelationMatrix, inputs: readonly Contribution[]): Refusal {
  const involved = inputs.filter((_, i) => matrix[i]!.some((r, j) => i !== j && r !== 0)).map((each) => each.name);
  return new Refusal({
    read: `the correlations of ${involved.join(', ')}`,
    expected: 'coefficients that can hold at once (a positive semi-definite matrix)',
    suggestion:
      'If a follows b and b follows c, a cannot run against c. Coefficients from readings may need more digits, or the readings themselves.',
  });
}

/** The inputs in groups that a correlation ties together, each as places in the list; most stand alone. */
export function correlatedGroups(
  inputs: readonly Contribution[],
  correlations: readonly Correlation[],
): readonly (readonly number[])[] {
  const group = inputs.map((_, index) => index);
  const place = new Map(inputs.map((each, index) => [each, index]));
  for (const { between } of correlations) {
    const i = place.get(between[0]);
    const j = place.get(between[1]);
    if (i === undefined || j === undefined) continue;
    const [kept, merged] = [group[i]!, group[j]!];
    for (let n = 0; n < group.length; n++) if (group[n] === merged) group[n] = kept;
  }
  const groups = new Map<number, number[]>();
  for (const [index, name] of group.entries()) groups.set(name, [...(groups.get(name) ?? []), index]);
  return [...groups.values()];
}
