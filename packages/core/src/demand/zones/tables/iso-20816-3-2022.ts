import { iso20816x3edition2022 } from '../../../source/iso-20816-3-2022.ts';
import { type Acquaintance, clause } from '../../../source/source.ts';
import { clearanceShares } from '../clearance.ts';
import { type Support, type ZoneTable, zoneTable } from '../zone-table.ts';
import {
  kilowatt,
  micrometres,
  micrometresPeakToPeak,
  millimetresPerSecond,
  perMinute,
  slowBand,
  usualBand,
} from './limits.ts';

type Three = readonly [number, number, number];

const groups = {
  1: { power: { above: 300 * kilowatt, upTo: 40e6 }, shaftHeight: { from: 0.315 } },
  2: { power: { above: 15 * kilowatt, upTo: 300 * kilowatt }, shaftHeight: { from: 0.16, below: 0.315 } },
} as const;

const conflict =
  'Secondary texts disagree whether this edition merged zones A and B, and the upper power of 40 MW is uncertain.';

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
      machines: 'industrial machinery, housing vibration at the bearings',
      excluded: 'hydropower and pumping plants, rotodynamic pumps with directly mounted impellers',
      ...groups[group],
      speed: { from: 120 * perMinute, to: 30_000 * perMinute },
      support,
    },
  } as const;
  const name = `iso-20816-3-2022-group-${group}-${support}`;
  const title = `ISO 20816-3:2022, group ${group}, ${support} support`;
  return [
    zoneTable({
      ...common,
      name: `${name}-velocity`,
      title: `${title}, velocity`,
      cited: clause(iso20816x3edition2022, 'Annex A', how),
      boundaries: millimetresPerSecond(velocity, usualBand),
      doubt: conflict,
    }),
    zoneTable({
      ...common,
      name: `${name}-displacement`,
      title: `${title}, displacement`,
      cited: clause(iso20816x3edition2022, 'Annex A', 'from memory'),
      boundaries: micrometres(displacement, usualBand),
      doubt: conflict,
    }),
  ];
}

/** Housing by Annex A, shaft by Annex B. Velocities of group 1 on rigid support are known second-hand too. */
export const iso20816x3edition2022tables: readonly ZoneTable[] = [
  ...housing(1, 'rigid', [2.3, 4.5, 7.1], [29, 57, 90], 'second-hand'),
  ...housing(1, 'flexible', [3.5, 7.1, 11], [45, 90, 140], 'from memory'),
  ...housing(2, 'rigid', [1.4, 2.8, 4.5], [22, 45, 71], 'from memory'),
  ...housing(2, 'flexible', [2.3, 4.5, 7.1], [37, 71, 113], 'from memory'),
  zoneTable({
    name: 'iso-20816-3-2022-shaft',
    title: 'ISO 20816-3:2022, shaft relative to its bearing',
    cited: clause(iso20816x3edition2022, 'Annex B', 'from memory'),
    reference: 'shaft-relative',
    boundaries: micrometresPeakToPeak([4800, 9000, 13_200]),
    withSpeed: { at: perMinute, exponent: -0.5 },
    clearanceShares,
    scope: {
      machines: 'industrial machinery on fluid-film bearings',
      speed: { from: 1000 * perMinute, to: 30_000 * perMinute },
    },
    doubt:
      'The lowest speed of the formula is uncertain: 1000 r/min in the older ISO 7919-3, perhaps held at 600 r/min here.',
  }),
];
