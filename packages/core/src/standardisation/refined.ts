import { type Choice, choiceOf } from './choice.ts';
import { costOf } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';

/**
 * A choice made better by its true cost, stairs of spares and stock included, where the search before went by straight
 * lines: points of one class move to another way, a type is emptied or taken up by all whom it helps, as long as
 * anything saves. Ways ruled out are not tried.
 */
export function refined(problem: ReducedProblem, choice: Choice, rounds = 8): Choice {
  const moving = new Moving(problem, choice);
  for (let round = 0; round < rounds; round++) {
    const moved = moving.points();
    const emptied = moving.emptied();
    const takenUp = moving.takenUp();
    if (!moved && !emptied && !takenUp) break;
  }
  const better = moving.choice();
  return better.cost < choice.cost ? better : choice;
}

class Moving {
  private readonly problem: ReducedProblem;
  private readonly costs: readonly Float64Array[];
  private readonly counts: Int32Array;
  private readonly taken: Map<number, number>[];
  private readonly classesOf: readonly number[][];

  constructor(problem: ReducedProblem, choice: Choice) {
    this.problem = problem;
    this.counts = choice.counts.slice();
    this.taken = choice.taken.map((ways) => new Map(ways.map(({ way, points }) => [way, points])));
    this.costs = problem.of.types.map((type, k) =>
      Float64Array.from({ length: problem.stairs[k]!.most + 1 }, (_, n) => costOf(type, problem.stairs[k]!, n)),
    );
    const classesOf: number[][] = problem.of.types.map(() => []);
    problem.pairPart.forEach((k, index) => {
      classesOf[k]!.push(problem.pairClass[index]!);
    });
    this.classesOf = classesOf;
  }

  choice(): Choice {
    return choiceOf(
      this.problem,
      this.taken.map((ways) => [...ways].map(([way, points]) => ({ way, points }))),
    );
  }

  /** Every class: some or all of its points another way. */
  points(): boolean {
    let any = false;
    for (let c = 0; c < this.taken.length; c++) {
      for (const [from, has] of [...this.taken[c]!]) {
        for (const many of new Set([has, 1])) {
          const to = this.cheapestMove(c, from, many, -1);
          if (to.saving <= 1e-9) continue;
          this.move(c, from, to.way, many);
          any = true;
          break;
        }
      }
    }
    return any;
  }

  /** Every type: all its points to their next best way, kept where that saves as a whole. */
  emptied(): boolean {
    return this.tried((k) => {
      if (this.counts[k] === 0) return false;
      for (const c of this.classesOf[k]!) {
        for (const [from, has] of [...this.taken[c]!]) {
          if (!this.takes(from, k)) continue;
          const { way } = this.cheapestMove(c, from, has, k);
          if (way < 0) return false;
          this.move(c, from, way, has);
        }
      }
      return true;
    });
  }

  /** Every type: all points come to it whom it costs less by its price than what they pay now, kept where that saves. */
  takenUp(): boolean {
    return this.tried((k) => {
      let any = false;
      const keeping = this.counts[k] === 0 ? this.problem.of.types[k]!.keeping : 0;
      for (const c of this.classesOf[k]!) {
        for (const [from, has] of [...this.taken[c]!]) {
          if (this.takes(from, k)) continue;
          const { way, saving } = this.cheapestMove(c, from, has, -1, k);
          if (way < 0 || saving + (this.counts[k] === 0 ? keeping : 0) <= 1e-9) continue;
          this.move(c, from, way, has);
          any = true;
        }
      }
      return any;
    });
  }

  /** Does something for each type and takes it back where the whole did not become cheaper. */
  private tried(change: (k: number) => boolean): boolean {
    let any = false;
    for (let k = 0; k < this.counts.length; k++) {
      const counts = this.counts.slice();
      const before = new Map<number, Map<number, number>>();
      for (const c of this.classesOf[k]!) before.set(c, new Map(this.taken[c]!));
      this.saved = 0;
      if (change(k) && this.saved > 1e-9) {
        any = true;
        continue;
      }
      this.counts.set(counts);
      for (const [c, ways] of before) this.taken[c] = ways;
    }
    return any;
  }

  private saved = 0;

  private cheapestMove(c: number, from: number, many: number, without: number, withPart = -1) {
    const { firstWay } = this.problem;
    let best = { way: -1, saving: Number.NEGATIVE_INFINITY };
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      if (w === from || (without >= 0 && this.takes(w, without)) || (withPart >= 0 && !this.takes(w, withPart)))
        continue;
      const saving = this.savingOf(from, w, many);
      if (saving > best.saving) best = { way: w, saving };
    }
    return best;
  }

  private savingOf(from: number, to: number, many: number): number {
    const { firstPart, part, beside } = this.problem;
    let saving = many * (beside[from]! - beside[to]!);
    for (let entry = firstPart[from]!; entry < firstPart[from + 1]!; entry++) {
      const k = part[entry]!;
      if (!this.takes(to, k)) saving += this.costs[k]![this.counts[k]!]! - this.costs[k]![this.counts[k]! - many]!;
    }
    for (let entry = firstPart[to]!; entry < firstPart[to + 1]!; entry++) {
      const k = part[entry]!;
      if (!this.takes(from, k)) saving -= this.costs[k]![this.counts[k]! + many]! - this.costs[k]![this.counts[k]!]!;
    }
    return saving;
  }

  private move(c: number, from: number, to: number, many: number): void {
    this.saved += this.savingOf(from, to, many);
    const { firstPart, part } = this.problem;
    const ways = this.taken[c]!;
    const left = ways.get(from)! - many;
    if (left === 0) ways.delete(from);
    else ways.set(from, left);
    ways.set(to, (ways.get(to) ?? 0) + many);
    for (let entry = firstPart[from]!; entry < firstPart[from + 1]!; entry++) this.counts[part[entry]!]! -= many;
    for (let entry = firstPart[to]!; entry < firstPart[to + 1]!; entry++) this.counts[part[entry]!]! += many;
  }

  private takes(w: number, k: number): boolean {
    const { firstPart, part } = this.problem;
    for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) if (part[entry] === k) return true;
    return false;
  }
}
