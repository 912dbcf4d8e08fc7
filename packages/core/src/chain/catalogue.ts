import { nearest } from '../quantity/index.ts';
import type { Cable } from './cable/kinds.ts';
import type { Input } from './input/kinds.ts';
import type { Mount } from './mount/kinds.ts';
import type { Supply } from './supply/kinds.ts';
import type { Transducer } from './transducer/kinds.ts';

/** The parts at hand, each by its name. */
export interface Catalogue {
  readonly title: string;
  readonly transducers: readonly Transducer[];
  readonly mounts: readonly Mount[];
  readonly cables: readonly Cable[];
  readonly supplies: readonly Supply[];
  readonly inputs: readonly Input[];
}

export type Shelf = 'transducers' | 'mounts' | 'cables' | 'supplies' | 'inputs';
export const shelves: readonly Shelf[] = ['transducers', 'mounts', 'cables', 'supplies', 'inputs'];

/** Several catalogues as one; a name that stands in a later one hides the earlier. */
export function together(catalogues: readonly Catalogue[]): Catalogue {
  const shelf = <S extends Shelf>(name: S): Catalogue[S] => {
    const parts = catalogues.flatMap((each) => each[name] as readonly { name: string }[]);
    return [...new Map(parts.map((part) => [part.name, part])).values()] as unknown as Catalogue[S];
  };
  return {
    title: catalogues.map((each) => each.title).join(' and '),
    transducers: shelf('transducers'),
    mounts: shelf('mounts'),
    cables: shelf('cables'),
    supplies: shelf('supplies'),
    inputs: shelf('inputs'),
  };
}

/** The part of a name on a shelf, or the name nearest to it. */
export function partCalled<S extends Shelf>(
  catalogue: Catalogue,
  shelf: S,
  name: string,
): { readonly found: Catalogue[S][number] } | { readonly found: undefined; readonly nearest: string | undefined } {
  const found = (catalogue[shelf] as readonly Catalogue[S][number][]).find((part) => part.name === name);
  if (found !== undefined) return { found };
  return {
    found: undefined,
    nearest: nearest(
      name,
      catalogue[shelf].map((part) => part.name),
    ),
  };
}
