import { type Plant, type Shelf, type Stated, valueIfStated } from '@soundpost/core';
import type { PlaceView } from './views.ts';

/** The shelf of the catalogue that the part of a place stands on. */
export const shelfOf: Readonly<Record<PlaceView['place'], Shelf>> = {
  transducer: 'transducers',
  mount: 'mounts',
  cable: 'cables',
  input: 'inputs',
};

export type PartChoices = Readonly<Record<PlaceView['place'], PlaceView['choices']>>;

/** What the catalogue has for each place of a chain. */
export function partChoices({ catalogue }: Plant): PartChoices {
  const choices = (place: PlaceView['place']): PlaceView['choices'] =>
    (catalogue[shelfOf[place]] as readonly Described[]).map((part) => ({ name: part.name, remark: remarkOf(part) }));
  return {
    transducer: choices('transducer'),
    mount: choices('mount'),
    cable: choices('cable'),
    input: choices('input'),
  };
}

interface Described {
  readonly name: string;
  readonly remark?: unknown;
  readonly sheet: { readonly values: Readonly<Record<string, Stated<unknown> | undefined>> };
}

/** What tells a part from its neighbours on the shelf: its remark, or how it is made. */
function remarkOf({ remark, sheet: { values } }: Described): string {
  const made = values.preparation ?? values.construction;
  const said = remark ?? (made === undefined ? undefined : valueIfStated(made));
  return typeof said === 'string' ? said : '';
}
