import { iso10816x3edition2009 } from '../../../source/iso-10816-3-2009.ts';
import { type Acquaintance, clause } from '../../../source/source.ts';
import { type Support, type ZoneTable, zoneTable } from '../zone-table.ts';
import { kilowatt, micrometres, millimetresPerSecond, perMinute, slowBand, usualBand } from './limits.ts';

type Three = readonly [number, number, number];

const groups = {
  1: { power: { above: 300 * kilowatt, upTo: 50e6 }, shaftHeight: { from: 0.315 } },
  2: { power: { above: 15 * kilowatt, upTo: 300 * kilowatt }, shaftHeight: { from: 0.16, below: 0.315 } },
} as const;

function housing(
  group: 1 | 2,
  support: Support,
  velocity: Three,
  displacement: Three,
  how: Acquaintance,
): readonly ZoneTable[] {
  const common = {
    reference: 'casing',
    slowBand: { below: 600 * perMinute, band: slowBand },
    scope: {
      machines: 'industrial machines, housing vibration at the bearings, measured in place',
      ...groups[group],
      speed: { from: 120 * perMinute, to: 15_000 * perMinute },
      support,
    },
    doubt: 'The upper power of 50 MW and the highest speed of 15 000 r/min are from memory.',
  } as const;
  const name = `iso-10816-3-2009-group-${group}-${support}`;
  const title = `ISO 10816-3:2009, group ${group}, ${support} support`;
  return [
    zoneTable({
      ...common,
      name: `${name}-velocity`,
      title: `${title}, velocity`,
      cited: clause(iso10816x3edition2009, 'Annex A', how),
      boundaries: millimetresPerSecond(velocity, usualBand),
    }),
    zoneTable({
      ...common,
      name: `${name}-displacement`,
      title: `${title}, displacement`,
      cited: clause(iso10816x3edition2009, 'Annex A', 'from memory'),
      boundaries: micrometres(displacement, usualBand),
    }),
  ];
}

/** The numbers of 2009, which the edition of 2022 kept. Velocities of group 1 on rigid support are known second-hand too. */
export const iso10816x3edition2009tables: readonly ZoneTable[] = [
  ...housing(1, 'rigid', [2.3, 4.5, 7.1], [29, 57, 90], 'second-hand'),
  ...housing(1, 'flexible', [3.5, 7.1, 11], [45, 90, 140], 'from memory'),
  ...housing(2, 'rigid', [1.4, 2.8, 4.5], [22, 45, 71], 'from memory'),
  ...housing(2, 'flexible', [2.3, 4.5, 7.1], [37, 71, 113], 'from memory'),
];
