import { type Choice, choiceOf } from './choice.ts';
import type { LeftToDecide } from './left-to-decide.ts';
import { piecesToBuy } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';

/** A mixed-integer problem as text any solver of the trade reads (CPLEX LP format), and the way back. */
export interface MixedIntegerModel {
  readonly text: string;
  readonly columns: number;
  readonly rows: number;
  /** The choice a solver's values stand for, with its cost worked out here and not taken from the solver. */
  choice(value: (column: string) => number): Choice;
  /** The values a choice stands for; columns not named are zero. */
  values(choice: Choice): Readonly<Record<string, number>>;
}

/**
 * Minimise Σ keeping·y + Σ price·b + Σ beside·x, where x counts the points of a class that go a way, y says whether a
 * type is kept, z climbs the stairs of its spares and b are its pieces to buy:
 * Σ x over the ways of a class = its points; Σ x over those that take a type ≤ points · y; pieces in use ≤ Σ width · z;
 * z falls from step to step, the first being y; b ≥ pieces + spares − in stock.
 */
export function mixedIntegerModel(problem: ReducedProblem, left: LeftToDecide): MixedIntegerModel {
  const { of, classes, stairs, firstWay, firstPart, part, beside } = problem;
  const objective: string[] = [];
  const rows: string[] = [];
  const integers: string[] = [];
  const binaries: string[] = [];
  const upper: string[] = [];
  const inUse = new Map<number, string[]>();
  const term = (value: number, column: string) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} ${column}`;
  for (const [c, { pieces }] of classes.entries()) {
    const all: string[] = [];
    const ofType = new Map<number, string[]>();
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      if (left.ways[w] === 0) continue;
      const x = `x${w}`;
      all.push(`+ ${x}`);
      integers.push(x);
      upper.push(`0 <= ${x} <= ${pieces}`);
      if (beside[w] !== 0) objective.push(term(beside[w]!, x));
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) {
        const k = part[entry]!;
        listed(ofType, k).push(`+ ${x}`);
        listed(inUse, k).push(`+ ${x}`);
      }
    }
    rows.push(`${all.join(' ')} = ${pieces}`);
    for (const [k, terms] of ofType) rows.push(`${terms.join(' ')} - ${pieces} y${k} <= 0`);
  }
  for (const [k, type] of of.types.entries()) {
    const uses = inUse.get(k);
    if (uses === undefined) continue;
    const most = classes.reduce((sum, each) => sum + each.pieces, 0);
    binaries.push(`y${k}`);
    if (type.keeping !== 0 && type.rule !== 'pinned') objective.push(term(type.keeping, `y${k}`));
    const steps = stairs[k]!.upTo.findIndex((upTo) => upTo >= most);
    const last = steps < 0 ? stairs[k]!.upTo.length - 1 : steps;
    const climbing: string[] = [];
    const spares: string[] = [];
    for (let step = 0; step <= last; step++) {
      const z = step === 0 ? `y${k}` : `z${k}_${step}`;
      const width = stairs[k]!.upTo[step]! - (stairs[k]!.upTo[step - 1] ?? 0);
      const more = stairs[k]!.spares[step]! - (stairs[k]!.spares[step - 1] ?? 0);
      climbing.push(`- ${width} ${z}`);
      if (more !== 0) spares.push(`- ${more} ${z}`);
      if (step === 0) continue;
      binaries.push(z);
      rows.push(`+ ${z} - ${step === 1 ? `y${k}` : `z${k}_${step - 1}`} <= 0`);
    }
    rows.push(`${uses.join(' ')} ${climbing.join(' ')} <= 0`);
    if (type.price === 0) continue;
    objective.push(term(type.price, `b${k}`));
    rows.push(`+ b${k} ${uses.map((use) => use.replace('+', '-')).join(' ')} ${spares.join(' ')} >= ${-type.inStock}`);
  }
  if (of.atMost !== undefined) {
    const counted = of.atMost.types.filter((k) => inUse.has(k)).map((k) => `+ y${k}`);
    if (counted.length > 0) rows.push(`${counted.join(' ')} <= ${of.atMost.count}`);
  }
  const text = [
    'Minimize',
    ` obj: ${objective.length === 0 ? '0 x0' : objective.join('\n ')}`,
    'Subject To',
    ...rows.map((row, index) => ` r${index}: ${row}`),
    'Bounds',
    ...upper.map((each) => ` ${each}`),
    'General',
    ...integers.map((each) => ` ${each}`),
    'Binary',
    ...binaries.map((each) => ` ${each}`),
    'End',
    '',
  ].join('\n');
  return {
    text,
    columns: integers.length + binaries.length,
    rows: rows.length,
    choice: (value) =>
      choiceOf(
        problem,
        classes.map((_, c) => {
          const taken: { way: number; points: number }[] = [];
          for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
            const points = left.ways[w] === 1 ? Math.round(value(`x${w}`)) : 0;
            if (points > 0) taken.push({ way: w, points });
          }
          return taken;
        }),
      ),
    values: ({ taken, counts }) => {
      const values: Record<string, number> = {};
      for (const { way, points } of taken.flat()) values[`x${way}`] = points;
      for (const [k, type] of of.types.entries()) {
        if (!inUse.has(k) || counts[k] === 0) continue;
        values[`y${k}`] = 1;
        for (let step = 1; step < stairs[k]!.upTo.length && stairs[k]!.upTo[step - 1]! < counts[k]!; step++) {
          values[`z${k}_${step}`] = 1;
        }
        values[`b${k}`] = piecesToBuy(type, stairs[k]!, counts[k]!);
      }
      return values;
    },
  };
}

function listed<K>(map: Map<K, string[]>, key: K): string[] {
  const list = map.get(key) ?? [];
  map.set(key, list);
  return list;
}
