import {
  cableKinds,
  type Fields,
  inputKinds,
  mountKinds,
  type PartKind,
  type Shelf,
  type Stated,
  supplyKinds,
  transducerKinds,
} from '@soundpost/core';

/** The kinds that may stand on each shelf. */
export const partKinds: Readonly<Record<Shelf, readonly PartKind<string, Fields>[]>> = {
  transducers: transducerKinds,
  mounts: mountKinds,
  cables: cableKinds,
  supplies: supplyKinds,
  inputs: inputKinds,
};

/** A part of any kind, its sheet as a mapping from field to what is stated of it. */
export interface AnyPart {
  readonly kind: string;
  readonly name: string;
  readonly sheet: { readonly of: string; readonly values: Readonly<Record<string, Stated<unknown> | undefined>> };
}

export function kindOn(shelf: Shelf, kind: string): PartKind<string, Fields> | undefined {
  return partKinds[shelf].find((each) => each.kind === kind);
}
