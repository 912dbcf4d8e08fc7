import { divided, type Fraction, fraction, isZero, minus, multiplied, plus } from '../quantity/index.ts';

/** 0 = Σ coefficient · unknown. */
export type LinearEquation = ReadonlyMap<string, Fraction>;

/** An equation that the earlier ones contradict, and all that take part in it, by their place in the list. */
export interface Contradiction {
  readonly equation: number;
  readonly with: readonly number[];
}

export interface Elimination {
  /** Exact value of each unknown that the equations fix, where the reference is 1. */
  readonly solved: ReadonlyMap<string, Fraction>;
  readonly contradictions: readonly Contradiction[];
}

interface Row {
  readonly pivot: string;
  readonly coefficients: Map<string, Fraction>;
  /** How much of each given equation is in this row. */
  readonly from: Map<number, Fraction>;
}

const zero = fraction(0);
const constantColumn = '';

/**
 * Gauss-Jordan elimination in exact fractions, equation by equation in the order given, with the reference set to 1. A
 * consistent surplus equation is let through, an inconsistent one is reported with those it contradicts and not used.
 */
export function eliminate(equations: readonly LinearEquation[], reference: string): Elimination {
  const rows: Row[] = [];
  const contradictions: Contradiction[] = [];
  for (const [index, equation] of equations.entries()) {
    const coefficients = new Map<string, Fraction>();
    for (const [unknown, factor] of equation) {
      add(coefficients, unknown === reference ? constantColumn : unknown, factor);
    }
    const from = new Map([[index, fraction(1)]]);
    for (const row of rows) subtract(coefficients, from, row, coefficients.get(row.pivot) ?? zero);
    const pivot = [...coefficients.keys()].find((unknown) => unknown !== constantColumn);
    if (pivot !== undefined) rows.push(withPivot(rows, pivot, coefficients, from));
    else if (coefficients.size > 0)
      contradictions.push({ equation: index, with: [...from.keys()].sort((a, b) => a - b) });
  }
  const solved = new Map<string, Fraction>([[reference, fraction(1)]]);
  for (const { pivot, coefficients } of rows) {
    const free = [...coefficients.keys()].some((unknown) => unknown !== pivot && unknown !== constantColumn);
    if (!free) solved.set(pivot, minus(zero, coefficients.get(constantColumn) ?? zero));
  }
  return { solved, contradictions };
}

/** Scales the new row to its pivot and takes the pivot out of every earlier row. */
function withPivot(
  rows: readonly Row[],
  pivot: string,
  coefficients: Map<string, Fraction>,
  from: Map<number, Fraction>,
): Row {
  const scale = coefficients.get(pivot)!;
  for (const [key, value] of coefficients) coefficients.set(key, divided(value, scale));
  for (const [key, value] of from) from.set(key, divided(value, scale));
  const row: Row = { pivot, coefficients, from };
  for (const earlier of rows)
    subtract(earlier.coefficients, earlier.from, row, earlier.coefficients.get(pivot) ?? zero);
  return row;
}

function subtract(coefficients: Map<string, Fraction>, from: Map<number, Fraction>, row: Row, times: Fraction): void {
  if (isZero(times)) return;
  for (const [unknown, value] of row.coefficients) add(coefficients, unknown, minus(zero, multiplied(times, value)));
  for (const [equation, value] of row.from) add(from, equation, minus(zero, multiplied(times, value)));
}

/** Adds to an entry; one that comes to nothing is taken out. */
function add<Key>(map: Map<Key, Fraction>, key: Key, value: Fraction): void {
  const total = plus(map.get(key) ?? zero, value);
  if (isZero(total)) map.delete(key);
  else map.set(key, total);
}
