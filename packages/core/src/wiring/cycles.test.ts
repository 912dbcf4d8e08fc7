import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Cycle, fundamentalCycles, type Line, simpleCycles, spanningForest } from './cycles.ts';

/** Up to nine lines over up to six nodes; two may join the same nodes, one may lead back to where it starts. */
const graphs = fc.array(
  fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })).map(([from, to]) => ({
    from: `n${from}`,
    to: `n${to}`,
  })),
  { maxLength: 9 },
);

/** Whether a choice of lines is one loop: every node of it met twice, all in one piece. */
function isLoop(lines: readonly Line[]): boolean {
  if (lines.length === 0) return false;
  const met = new Map<string, number>();
  for (const { from, to } of lines) for (const node of [from, to]) met.set(node, (met.get(node) ?? 0) + 1);
  if ([...met.values()].some((times) => times !== 2)) return false;
  const reached = new Set([lines[0]!.from]);
  for (let grew = true; grew; ) {
    const before = reached.size;
    for (const { from, to } of lines) if (reached.has(from) || reached.has(to)) reached.add(from).add(to);
    grew = reached.size > before;
  }
  return reached.size === met.size;
}

/** By trying every choice of lines there is. */
function bruteForce(lines: readonly Line[]): readonly string[] {
  const found: string[] = [];
  for (let choice = 1; choice < 2 ** lines.length; choice++) {
    if (isLoop(lines.filter((_, place) => (choice >> place) & 1))) found.push(choice.toString(2));
  }
  return found.sort();
}

const mask = (cycle: Cycle, lines: readonly Line[]) =>
  cycle.reduce((sum, line) => sum + 2 ** lines.indexOf(line), 0).toString(2);

test('law: every simple loop of a random graph is found once, as by trying every choice of lines (brute force)', () => {
  fc.assert(
    fc.property(graphs, (lines) => {
      const { cycles, more } = simpleCycles(lines, 10_000);
      expect(more).toBe(false);
      expect(cycles.map((cycle) => mask(cycle, lines)).sort()).toEqual(bruteForce(lines));
    }),
    { numRuns: 400 },
  );
});

/** Rank over the two-element field, by elimination. */
function rank(rows: readonly number[]): number {
  const basis: number[] = [];
  for (const row of rows) {
    const rest = basis.reduce((left, each) => Math.min(left, left ^ each), row);
    if (rest !== 0) basis.push(rest);
  }
  return basis.length;
}

function piecesOf(lines: readonly Line[], nodes: ReadonlySet<string>): number {
  const label = new Map([...nodes].map((node, place) => [node, place]));
  for (let changed = true; changed; ) {
    changed = false;
    for (const { from, to } of lines) {
      const least = Math.min(label.get(from)!, label.get(to)!);
      for (const node of [from, to]) {
        if (label.get(node) === least) continue;
        label.set(node, least);
        changed = true;
      }
    }
  }
  return new Set(label.values()).size;
}

test('law: as many independent loops as edges − nodes + parts, each a loop, and every loop a sum of them (brute force)', () => {
  fc.assert(
    fc.property(graphs, (lines) => {
      const cycles = fundamentalCycles(spanningForest(lines));
      const nodes = new Set(lines.flatMap(({ from, to }) => [from, to]));
      expect(cycles.length).toBe(lines.length - nodes.size + piecesOf(lines, nodes));
      for (const cycle of cycles) expect(isLoop(cycle)).toBe(true);
      const masks = cycles.map((cycle) => Number.parseInt(mask(cycle, lines), 2));
      expect(rank(masks)).toBe(cycles.length);
      const all = bruteForce(lines).map((each) => Number.parseInt(each, 2));
      expect(rank([...masks, ...all])).toBe(cycles.length);
    }),
    { numRuns: 400 },
  );
});

test('law: with one line of each independent loop taken out, in turn, none is left', () => {
  fc.assert(
    fc.property(graphs, (lines) => {
      const { tree } = spanningForest(lines);
      expect(bruteForce(tree)).toEqual([]);
    }),
  );
});

test('the lines of a loop stand in the order in which they are passed', () => {
  fc.assert(
    fc.property(graphs, (lines) => {
      for (const cycle of [...fundamentalCycles(spanningForest(lines)), ...simpleCycles(lines, 10_000).cycles]) {
        for (const [place, line] of cycle.entries()) {
          const next = cycle[(place + 1) % cycle.length]!;
          expect([next.from, next.to].some((node) => node === line.from || node === line.to)).toBe(true);
        }
      }
    }),
  );
});

test('negative: the bound is kept, and said', () => {
  const nodes = Array.from({ length: 7 }, (_, place) => `n${place}`);
  const complete = nodes.flatMap((from, place) => nodes.slice(place + 1).map((to) => ({ from, to })));
  const some = simpleCycles(complete, 50);
  expect(some.cycles.length).toBe(50);
  expect(some.more).toBe(true);
  // Printed: OEIS A002807, simple cycles of the complete graph of seven nodes (from memory): 1172.
  expect(simpleCycles(complete, 2000)).toMatchObject({ more: false, cycles: { length: 1172 } });
});
