import type { Shelf } from '@soundpost/core';

export const shelfTitles: Readonly<Record<Shelf, string>> = {
  transducers: 'Transducers',
  mounts: 'Mounts',
  cables: 'Cables',
  supplies: 'Supplies, barriers, boxes',
  inputs: 'Inputs',
};
