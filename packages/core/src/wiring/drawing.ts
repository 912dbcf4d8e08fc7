import { type Answer, unanswered } from '../quantity/index.ts';
import type { Conductor, IsolatedJoint, NodeKind, WiringGraph, WiringNode } from './graph.ts';

export const mainEarth = 'main earth';

export const unmeasured = (of: string): Answer<number> => unanswered([{ of, what: 'resistance' }]);

/** Node names of a point, for whoever looks one up. */
export const nodeOf = {
  frame: (machine: string) => `frame of ${machine}`,
  bond: (machine: string) => `equipotential bond of ${machine}`,
  case: (point: string) => `case of ${point}`,
  signal: (point: string) => `return of ${point}`,
  common: (point: string) => `common of ${point}`,
  screen: (point: string) => `screen of ${point}`,
  farScreen: (point: string) => `screen of ${point}, behind the box`,
  box: (point: string) => `junction box of ${point}`,
} as const;

/** A wiring graph while it is drawn. */
export class Drawing {
  readonly #nodes = new Map<string, WiringNode>();
  readonly #conductors: Conductor[] = [];
  readonly #shared = new Set<string>();
  readonly #isolations: IsolatedJoint[] = [];
  readonly #unknown: WiringGraph['unknown'][number][] = [];

  node(id: string, is: NodeKind): string {
    if (!this.#nodes.has(id)) this.#nodes.set(id, { id, is });
    return id;
  }

  conductor(each: Conductor): void {
    // The earthing of a machine or cabinet is there once, however many points share it.
    if (each.point === undefined) {
      if (this.#shared.has(each.name)) return;
      this.#shared.add(each.name);
    }
    this.#conductors.push(each);
  }

  /** A joint that conducts, or does not, or of which that is not known. */
  joint(conducts: Answer<boolean>, each: Conductor & { readonly point: string }, by: string): void {
    if (!conducts.known) {
      const { from, to, point, name } = each;
      this.#unknown.push({ from, to, point, joint: name, missing: conducts.missing });
    } else if (conducts.value) this.conductor(each);
    else this.#isolations.push({ from: each.from, to: each.to, by, point: each.point });
  }

  graph(): WiringGraph {
    return {
      nodes: [...this.#nodes.values()],
      conductors: this.#conductors,
      isolations: this.#isolations,
      unknown: this.#unknown,
    };
  }
}

/** A protective conductor from a node to the main earth, drawn once. */
export function earthed(drawing: Drawing, node: string): void {
  drawing.conductor({
    name: `protective earth of ${node}`,
    use: 'earthing',
    from: node,
    to: mainEarth,
    resistance: unmeasured(`protective earth of ${node}`),
    order: 9,
  });
}
