import {
  answer,
  appraisal,
  type Catalogue,
  type ChainParts,
  type DesignedPoint,
  type Plant,
  parseQuantity,
  partCalled,
  Refusal,
  type Shelf,
  type Writing,
} from '@soundpost/core';
import { unknownName } from '../plant/point-called.ts';

/** Places of a chain that may be taken by another part, by the shelf it comes from. */
const shelves = { transducer: 'transducers', mount: 'mounts', cable: 'cables', input: 'inputs' } as const;

/** What of a chain is another than the chosen one; what is left out stays. */
export type ChainChanges = Readonly<Partial<Record<keyof typeof shelves, string>>> & { readonly cableLength?: number };

/** The point with parts of its chain exchanged, judged anew. Throws Refusal. */
export function otherChain(plant: Plant, point: DesignedPoint, changes: ChainChanges): DesignedPoint {
  const { way, chosen } = point.stated;
  if (way === undefined || chosen === undefined) {
    throw new Refusal({ read: point.point.of, expected: "a point with a 'chain' from transducer to input" });
  }
  const exchanged = Object.entries(shelves).flatMap(([place, shelf]) => {
    const name = changes[place as keyof typeof shelves];
    return name === undefined ? [] : [[place, partOf(plant, shelf, name)] as const];
  });
  const { cableLength } = changes;
  const parts: ChainParts = {
    ...way,
    ...chosen,
    ...Object.fromEntries(exchanged),
    ...(cableLength === undefined ? {} : { cableLength: answer(cableLength) }),
  };
  return { ...point, appraisal: appraisal(point.point, parts, plant.policy) };
}

function partOf<S extends Shelf>(plant: Plant, shelf: S, called: string): Catalogue[S][number] {
  const looked = partCalled(plant.catalogue, shelf, called);
  if (looked.found !== undefined) return looked.found;
  const names = plant.catalogue[shelf].map(({ name }) => name);
  throw unknownName(called, `one of the ${shelf} of the catalogue`, names);
}

/** `PVT-4/stud`, or places with what stands there: `mount:magnet`, `cable-length:300 m`. Throws Refusal. */
export function changesTyped(typed: readonly string[], writing?: Writing): ChainChanges {
  const changes: Record<string, string | number> = {};
  for (const each of typed) {
    const [place, ...rest] = each.split(':').map((part) => part.trim());
    const value = rest.join(':');
    if (place === 'cable-length' && value !== '') changes.cableLength = parseQuantity(value, 'length', writing);
    else if (Object.hasOwn(shelves, place!) && value !== '') changes[place!] = value;
    else if (rest.length === 0) {
      const [transducer, mount] = each.split('/').map((part) => part.trim());
      changes.transducer = transducer!;
      if (mount !== undefined) changes.mount = mount;
    } else {
      throw new Refusal({
        read: `--against ${each}`,
        expected: `TRANSDUCER/MOUNT, or PLACE:PART with the place ${Object.keys(shelves).join(', ')} or cable-length`,
      });
    }
  }
  return changes;
}
