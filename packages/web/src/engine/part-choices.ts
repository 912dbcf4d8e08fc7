import type { Plant, Shelf } from '@soundpost/core';
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
    (catalogue[shelfOf[place]] as readonly { name: string; remark?: unknown }[]).map(({ name, remark }) => ({
      name,
      remark: typeof remark === 'string' ? remark : '',
    }));
  return {
    transducer: choices('transducer'),
    mount: choices('mount'),
    cable: choices('cable'),
    input: choices('input'),
  };
}
