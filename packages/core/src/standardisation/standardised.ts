import type { Choice } from './choice.ts';
import { costOf, costStairs, piecesToBuy, sparesAt } from './part-cost.ts';
import type { KeepingProblem, PartType, Way } from './part-type.ts';
import { type PreparedKeeping, preparedKeeping } from './prepared.ts';
import type { NeedClass } from './reduced.ts';

/** A part number the plant keeps, and what it is kept for. */
export interface KeptType {
  readonly type: PartType;
  readonly place: number;
  readonly inUse: number;
  readonly spares: number;
  readonly toBuy: number;
  readonly cost: number;
  /** Points it stands at. */
  readonly at: readonly string[];
}

/** How the cost is known to be the least: by the shares alone, by a solver, or only to within a gap. */
export type KeepingProof =
  | { readonly by: 'shares' }
  | { readonly by: 'solver'; readonly name: string }
  | { readonly by: 'none' };

/** The part numbers a plant keeps, with the way of each point. */
export interface StandardisedPlant {
  readonly kept: readonly KeptType[];
  readonly chosen: readonly { readonly point: string; readonly way: Way }[];
  /** Points no allowed and priced way meets. */
  readonly unmet: readonly string[];
  readonly cost: number;
  /** No choice costs less. */
  readonly bound: number;
  /** 1 − bound / cost. */
  readonly gap: number;
  readonly proof: KeepingProof;
}

/** What a solver found, as far as it matters here. */
export interface SolverWord {
  readonly choice: Choice;
  readonly bound: number;
  readonly proven: boolean;
  readonly name: string;
}

/** A bound this near the cost, as a share of it, is the cost: the rest is rounding. */
const rounding = 1e-9;

/** The better of what was searched and what a solver says, with the higher of the two bounds. */
export function standardisedPlant(prepared: PreparedKeeping, solver?: SolverWord): StandardisedPlant {
  const { problem } = prepared;
  // A solver that only proves hands the same choice back within its tolerance; ours is then kept.
  const better = solver !== undefined && solver.choice.cost < prepared.choice.cost * (1 - rounding);
  const choice = better ? solver.choice : prepared.choice;
  const solverBound = solver?.proven === true ? choice.cost : (solver?.bound ?? Number.NEGATIVE_INFINITY);
  const bound = Math.min(choice.cost, Math.max(prepared.bound.value, solverBound));
  const gap = choice.cost === 0 ? 0 : 1 - bound / choice.cost;
  const byShares = prepared.bound.value >= choice.cost * (1 - rounding);
  const chosen = chosenWays(problem.classes, choice, (c, w) => problem.classes[c]!.ways[w - problem.firstWay[c]!]!);
  return {
    kept: problem.of.types.flatMap((type, place): KeptType[] => {
      const inUse = choice.counts[place]!;
      if (inUse === 0 && type.rule !== 'pinned') return [];
      const stairs = problem.stairs[place]!;
      return [
        {
          type,
          place,
          inUse,
          spares: sparesAt(stairs, inUse),
          toBuy: inUse === 0 ? 0 : piecesToBuy(type, stairs, inUse),
          cost: costOf(type, stairs, inUse),
          at: chosen.filter(({ way }) => way.parts.includes(place)).map(({ point }) => point),
        },
      ];
    }),
    chosen,
    unmet: problem.unmet.flatMap(({ points }) => points),
    cost: choice.cost,
    bound,
    gap: gap <= rounding ? 0 : gap,
    proof: byShares ? { by: 'shares' } : solver?.proven === true ? { by: 'solver', name: solver.name } : { by: 'none' },
  };
}

/** Points of a class take its ways in order: the first ones the first way, and so on. */
function chosenWays(classes: readonly NeedClass[], { taken }: Choice, wayAt: (c: number, w: number) => Way) {
  return classes.flatMap(({ members }, c) => {
    const points = members.flatMap((member) => member.points);
    let from = 0;
    return taken[c]!.flatMap(({ way, points: many }) => {
      const part = points.slice(from, from + many).map((point) => ({ point, way: wayAt(c, way) }));
      from += many;
      return part;
    });
  });
}

/** What the plant would cost without one part number. */
export interface PriceOfType {
  readonly kept: KeptType;
  /** Points nothing else can be chosen for; with such there is no cost without it. */
  readonly irreplaceableAt: readonly string[];
  /** More than now, at least and at most: the two are equal where both were proven. */
  readonly more: { readonly atLeast: number; readonly atMost: number } | undefined;
}

/** The price of keeping each type, by choosing again without it: what the exception costs that only it can serve. */
export function pricesOfTypes(of: KeepingProblem, plan: StandardisedPlant, rounds = 400): readonly PriceOfType[] {
  const unmetBefore = new Set(plan.unmet);
  return plan.kept.map((kept) => {
    const types = of.types.map((type, k) => (k === kept.place ? { ...type, rule: 'forbidden' as const } : type));
    const again = preparedKeeping({ ...of, types }, rounds);
    const unmet = again.problem.unmet.flatMap(({ points }) => points).filter((point) => !unmetBefore.has(point));
    if (unmet.length > 0) return { kept, irreplaceableAt: unmet, more: undefined };
    // Its own pinned keeping is still owed where the owner wants it kept.
    return {
      kept,
      irreplaceableAt: [],
      more: {
        atLeast: Math.max(kept.type.rule === 'pinned' ? Number.NEGATIVE_INFINITY : 0, again.bound.value - plan.cost),
        atMost: again.choice.cost - plan.bound,
      },
    };
  });
}

/** What a plant costs with these ways, one for each point, whether or not anybody would choose them. */
export function costOfWays(of: KeepingProblem, ways: readonly Way[]): number {
  const counts = new Int32Array(of.types.length);
  let cost = 0;
  for (const way of ways) {
    cost += way.beside;
    for (const k of way.parts) counts[k]! += 1;
  }
  for (const [k, type] of of.types.entries()) {
    cost += costOf(type, costStairs(type, Math.max(1, counts[k]!), of.serviceLevel), counts[k]!);
  }
  return cost;
}
