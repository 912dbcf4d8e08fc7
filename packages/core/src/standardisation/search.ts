import type { CostLine } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';
import { wayCosts } from './shared-cost-bound.ts';

const none = -1;

/**
 * A good set of part types, found by opening and closing them from a first set until nothing helps: close the type
 * whose loss costs least while that saves; open what a class lacks for a cheaper way where the classes together save
 * more than its fixed cost; try an opening that alone does not pay when it lets others be closed. Works on lines in
 * place of stairs. Returns the way of each class.
 */
export function searched(
  problem: ReducedProblem,
  lines: readonly CostLine[],
  first: Uint8Array,
  atMost?: Limit,
): Int32Array {
  const state = new OpenTypes(problem, lines, first);
  state.closeWhilePaying();
  for (let round = 0; round < 40; round++) {
    const before = state.cost;
    for (const opening of state.openings().slice(0, 24)) {
      if (opening.gain < -opening.fixed) continue;
      const trial = state.copy();
      trial.open(opening.parts);
      trial.closeWhilePaying();
      if (trial.cost < state.cost - 1e-9 * Math.abs(state.cost)) state.become(trial);
    }
    if (state.cost >= before - 1e-9 * Math.abs(before)) break;
  }
  if (atMost !== undefined) state.closeDownTo(atMost);
  return state.way;
}

/** At most so many types of a list. */
export interface Limit {
  readonly types: readonly number[];
  readonly count: number;
}

/** Types that are kept for now, each class on its cheapest way among them. */
class OpenTypes {
  readonly way: Int32Array;
  cost = 0;
  private readonly problem: ReducedProblem;
  private readonly lines: readonly CostLine[];
  private readonly isOpen: Uint8Array;
  private readonly cheapestFirst: Int32Array;
  private readonly perPoint: Float64Array;
  private readonly classesOf: readonly Int32Array[];

  constructor(problem: ReducedProblem, lines: readonly CostLine[], isOpen: Uint8Array, like?: OpenTypes) {
    this.problem = problem;
    this.lines = lines;
    this.isOpen = isOpen;
    this.perPoint = like?.perPoint ?? wayCosts(problem, lines);
    this.cheapestFirst = like?.cheapestFirst ?? sortedWays(problem, this.perPoint);
    this.classesOf = like?.classesOf ?? classesByType(problem);
    if (like !== undefined) {
      this.way = like.way.slice();
      this.cost = like.cost;
      return;
    }
    this.way = new Int32Array(problem.classes.length).fill(none);
    for (let c = 0; c < this.way.length; c++) this.makeReachable(c);
    for (let c = 0; c < this.way.length; c++) this.way[c] = this.cheapestOpen(c, none);
    this.recount();
  }

  copy(): OpenTypes {
    return new OpenTypes(this.problem, this.lines, this.isOpen.slice(), this);
  }

  become(other: OpenTypes): void {
    this.way.set(other.way);
    this.isOpen.set(other.isOpen);
    this.cost = other.cost;
  }

  open(parts: readonly number[]): void {
    for (const k of parts) this.isOpen[k] = 1;
    const touched = new Set(parts.flatMap((k) => [...this.classesOf[k]!]));
    for (const c of touched) this.way[c] = this.cheapestOpen(c, none);
    this.recount();
  }

  closeWhilePaying(): void {
    for (;;) {
      let best = 0;
      let which = none;
      for (let k = 0; k < this.isOpen.length; k++) {
        if (this.isOpen[k] === 0) continue;
        const saving = this.savingWithout(k);
        if (saving > best + 1e-9) {
          best = saving;
          which = k;
        }
      }
      if (which === none) return;
      this.close(which);
    }
  }

  closeDownTo({ types, count }: Limit): void {
    for (;;) {
      const open = types.filter((k) => this.isOpen[k] === 1);
      if (open.length <= count) return;
      const closable = open
        .map((k) => ({ k, saving: this.savingWithout(k) }))
        .filter(({ saving }) => saving > Number.NEGATIVE_INFINITY)
        .sort((a, b) => b.saving - a.saving);
      if (closable.length === 0) return;
      this.close(closable[0]!.k);
    }
  }

  /** Sets of closed types that would open cheaper ways, with what all classes together would save, best first. */
  openings(): readonly { readonly parts: readonly number[]; readonly gain: number; readonly fixed: number }[] {
    const { problem, perPoint } = this;
    const gains = new Map<string, { parts: number[]; gain: number }>();
    for (let c = 0; c < this.way.length; c++) {
      const now = perPoint[this.way[c]!]!;
      const seen = new Map<string, number>();
      for (let at = problem.firstWay[c]!; at < problem.firstWay[c + 1]!; at++) {
        const w = this.cheapestFirst[at]!;
        if (perPoint[w]! >= now) break;
        const lacking: number[] = [];
        for (let entry = problem.firstPart[w]!; entry < problem.firstPart[w + 1]!; entry++) {
          if (this.isOpen[problem.part[entry]!] === 0) lacking.push(problem.part[entry]!);
        }
        const key = lacking.join(',');
        if (seen.has(key)) continue;
        seen.set(key, w);
        const known = gains.get(key) ?? { parts: lacking, gain: 0 };
        known.gain += problem.classes[c]!.pieces * (now - perPoint[w]!);
        gains.set(key, known);
      }
    }
    return [...gains.values()]
      .map(({ parts, gain }) => {
        const fixed = parts.reduce((sum, k) => sum + this.lines[k]!.fixed, 0);
        return { parts, gain: gain - fixed, fixed };
      })
      .sort((a, b) => b.gain - a.gain);
  }

  /** What closing a type saves; minus infinity where a class would be left without a way, or the type is pinned. */
  private savingWithout(k: number): number {
    if (this.problem.of.types[k]!.rule === 'pinned') return Number.NEGATIVE_INFINITY;
    let saving = this.lines[k]!.fixed;
    for (const c of this.classesOf[k]!) {
      if (!this.takes(this.way[c]!, k)) continue;
      const other = this.cheapestOpen(c, k);
      if (other === none) return Number.NEGATIVE_INFINITY;
      saving -= this.problem.classes[c]!.pieces * (this.perPoint[other]! - this.perPoint[this.way[c]!]!);
    }
    return saving;
  }

  private close(k: number): void {
    this.isOpen[k] = 0;
    for (const c of this.classesOf[k]!) if (this.takes(this.way[c]!, k)) this.way[c] = this.cheapestOpen(c, none);
    this.recount();
  }

  private takes(w: number, k: number): boolean {
    const { firstPart, part } = this.problem;
    for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) if (part[entry] === k) return true;
    return false;
  }

  private cheapestOpen(c: number, without: number): number {
    const { firstWay, firstPart, part } = this.problem;
    for (let at = firstWay[c]!; at < firstWay[c + 1]!; at++) {
      const w = this.cheapestFirst[at]!;
      let all = true;
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) {
        const k = part[entry]!;
        if (this.isOpen[k] === 0 || k === without) {
          all = false;
          break;
        }
      }
      if (all) return w;
    }
    return none;
  }

  /** Opens what the class's cheapest way takes, where none is open. */
  private makeReachable(c: number): void {
    const { firstWay, firstPart, part } = this.problem;
    if (this.cheapestOpen(c, none) !== none) return;
    const w = this.cheapestFirst[firstWay[c]!]!;
    for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) this.isOpen[part[entry]!] = 1;
  }

  private recount(): void {
    let cost = 0;
    for (let c = 0; c < this.way.length; c++) cost += this.problem.classes[c]!.pieces * this.perPoint[this.way[c]!]!;
    for (let k = 0; k < this.isOpen.length; k++) if (this.isOpen[k] === 1) cost += this.lines[k]!.fixed;
    this.cost = cost;
  }
}

function sortedWays({ classes, firstWay }: ReducedProblem, cost: Float64Array): Int32Array {
  const order = new Int32Array(cost.length);
  for (let w = 0; w < order.length; w++) order[w] = w;
  for (let c = 0; c < classes.length; c++) {
    order.subarray(firstWay[c]!, firstWay[c + 1]!).sort((a, b) => cost[a]! - cost[b]! || a - b);
  }
  return order;
}

function classesByType({ of, pairPart, pairClass }: ReducedProblem): readonly Int32Array[] {
  const lists = of.types.map((): number[] => []);
  for (let index = 0; index < pairPart.length; index++) lists[pairPart[index]!]!.push(pairClass[index]!);
  return lists.map((list) => Int32Array.from(list));
}
