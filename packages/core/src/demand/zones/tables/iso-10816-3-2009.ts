import { iso10816x3edition2009 } from '../../../source/iso-10816-3-2009.ts';
import type { ZoneTable } from '../zone-table.ts';
import { type HousingEdition, housing } from './industrial-machines.ts';
import { perMinute } from './limits.ts';

const edition: HousingEdition = {
  name: 'iso-10816-3-2009',
  title: 'ISO 10816-3:2009',
  source: iso10816x3edition2009,
  scope: { machines: 'industrial machines, housing vibration at the bearings, measured in place' },
  largestPower: 50e6,
  highestSpeed: 15_000 * perMinute,
  doubt: 'The upper power of 50 MW and the highest speed of 15 000 r/min are from memory.',
};

/** The numbers of 2009, which the edition of 2022 kept. Velocities of group 1 on rigid support are known second-hand too. */
export const iso10816x3edition2009tables: readonly ZoneTable[] = [
  ...housing(edition, 1, 'rigid', [2.3, 4.5, 7.1], [29, 57, 90], 'second-hand'),
  ...housing(edition, 1, 'flexible', [3.5, 7.1, 11], [45, 90, 140], 'from memory'),
  ...housing(edition, 2, 'rigid', [1.4, 2.8, 4.5], [22, 45, 71], 'from memory'),
  ...housing(edition, 2, 'flexible', [2.3, 4.5, 7.1], [37, 71, 113], 'from memory'),
];
