/** A line between two nodes of a graph; two lines may join the same two nodes. */
export interface Line {
  readonly from: string;
  readonly to: string;
}

/** A closed way through a graph: its lines in order, no node passed twice. */
export type Cycle<L extends Line = Line> = readonly L[];

/** Lines of a graph that join all it joins without closing a loop, and those left over. */
export interface SpanningForest<L extends Line> {
  readonly tree: readonly L[];
  /** Each closes one loop with the tree. */
  readonly chords: readonly L[];
}

/** Grows the forest in the order in which the lines are given: what stands first stays in the tree. */
export function spanningForest<L extends Line>(lines: readonly L[]): SpanningForest<L> {
  const parents = new Map<string, string>();
  // Each step hangs a node one place higher, so that long chains of joints stay short to climb.
  const root = (node: string): string => {
    let at = node;
    for (let next = parents.get(at); next !== undefined; next = parents.get(at)) {
      const above = parents.get(next);
      if (above !== undefined) parents.set(at, above);
      at = above ?? next;
    }
    return at;
  };
  const tree: L[] = [];
  const chords: L[] = [];
  for (const line of lines) {
    const [a, b] = [root(line.from), root(line.to)];
    if (a === b) chords.push(line);
    else {
      parents.set(a, b);
      tree.push(line);
    }
  }
  return { tree, chords };
}

/** The loop each chord closes with the tree: as many as there are independent loops, edges − nodes + parts. */
export function fundamentalCycles<L extends Line>({ tree, chords }: SpanningForest<L>): readonly Cycle<L>[] {
  const roots = rooted(tree);
  return chords.map((chord) => [chord, ...wayBetween(chord.to, chord.from, roots)]);
}

/** How a node of a tree hangs: by which line, from which node, how many lines below its root. */
interface Hanging<L extends Line> {
  readonly line: L;
  readonly from: string;
  readonly depth: number;
}

/** Every node of a forest but its roots, with the line it hangs by. */
function rooted<L extends Line>(tree: readonly L[]): ReadonlyMap<string, Hanging<L>> {
  const touching = linesByNode(tree);
  const hanging = new Map<string, Hanging<L>>();
  const met = new Set<string>();
  for (const root of touching.keys()) {
    if (met.has(root)) continue;
    met.add(root);
    const open = [root];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      for (const line of touching.get(node)!) {
        const next = otherEnd(line, node);
        if (met.has(next)) continue;
        met.add(next);
        hanging.set(next, { line, from: node, depth: (hanging.get(node)?.depth ?? 0) + 1 });
        open.push(next);
      }
    }
  }
  return hanging;
}

/** The only way between two nodes of a tree, by climbing from the lower one until both meet; none for the same node. */
function wayBetween<L extends Line>(from: string, to: string, hanging: ReadonlyMap<string, Hanging<L>>): readonly L[] {
  const first: L[] = [];
  const last: L[] = [];
  let [near, far] = [from, to];
  while (near !== far) {
    const [ofNear, ofFar] = [hanging.get(near), hanging.get(far)];
    if ((ofNear?.depth ?? 0) >= (ofFar?.depth ?? 0)) {
      first.push(ofNear!.line);
      near = ofNear!.from;
    } else {
      last.push(ofFar!.line);
      far = ofFar!.from;
    }
  }
  return [...first, ...last.reverse()];
}

export interface SimpleCycles<L extends Line> {
  readonly cycles: readonly Cycle<L>[];
  /** Whether there were more than the bound. */
  readonly more: boolean;
}

/**
 * Every loop that passes no node twice, once each, up to a bound. Each is found from its earliest line: with that line
 * gone on, only later lines may follow.
 */
export function simpleCycles<L extends Line>(lines: readonly L[], bound: number): SimpleCycles<L> {
  const cycles: L[][] = [];
  const places = new Map(lines.map((line, place) => [line, place]));
  const touching = linesByNode(lines);
  let more = false;

  const follow = (node: string, home: string, earliest: number, way: readonly L[], passed: ReadonlySet<string>) => {
    for (const line of touching.get(node) ?? []) {
      if (more) return;
      if (places.get(line)! <= earliest) continue;
      const next = otherEnd(line, node);
      if (next === home) {
        if (cycles.length === bound) more = true;
        else cycles.push([...way, line]);
      } else if (!passed.has(next)) follow(next, home, earliest, [...way, line], new Set([...passed, next]));
    }
  };

  for (const [place, line] of lines.entries()) {
    if (more) break;
    if (line.from !== line.to) follow(line.to, line.from, place, [line], new Set([line.from, line.to]));
    else if (cycles.length === bound) more = true;
    else cycles.push([line]);
  }
  return { cycles, more };
}

/** The nodes that a node is joined to, itself among them. */
export function joinedTo(node: string, lines: readonly Line[]): ReadonlySet<string> {
  const touching = linesByNode(lines);
  const reached = new Set([node]);
  for (const at of reached) for (const line of touching.get(at) ?? []) reached.add(otherEnd(line, at));
  return reached;
}

function otherEnd(line: Line, node: string): string {
  return line.from === node ? line.to : line.from;
}

function linesByNode<L extends Line>(lines: readonly L[]): ReadonlyMap<string, readonly L[]> {
  const touching = new Map<string, L[]>();
  for (const line of lines) {
    for (const node of new Set([line.from, line.to])) {
      const list = touching.get(node);
      if (list === undefined) touching.set(node, [line]);
      else list.push(line);
    }
  }
  return touching;
}
