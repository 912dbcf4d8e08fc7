import { iso20816x3edition2022 } from '../../../source/iso-20816-3-2022.ts';
import { clause } from '../../../source/source.ts';
import { clearanceShares } from '../clearance.ts';
import { type ZoneTable, zoneTable } from '../zone-table.ts';
import { type HousingEdition, housing } from './industrial-machines.ts';
import { micrometresPeakToPeak, perMinute } from './limits.ts';

const edition: HousingEdition = {
  name: 'iso-20816-3-2022',
  title: 'ISO 20816-3:2022',
  source: iso20816x3edition2022,
  scope: {
    machines: 'industrial machinery, housing vibration at the bearings',
    excluded: 'hydropower and pumping plants, rotodynamic pumps with directly mounted impellers',
  },
  largestPower: 40e6,
  highestSpeed: 30_000 * perMinute,
  doubt:
    'Secondary texts disagree whether this edition merged zones A and B, and the upper power of 40 MW is uncertain.',
};

/** Housing by Annex A, shaft by Annex B. Velocities of group 1 on rigid support are known second-hand too. */
export const iso20816x3edition2022tables: readonly ZoneTable[] = [
  ...housing(edition, 1, 'rigid', [2.3, 4.5, 7.1], [29, 57, 90], 'second-hand'),
  ...housing(edition, 1, 'flexible', [3.5, 7.1, 11], [45, 90, 140], 'from memory'),
  ...housing(edition, 2, 'rigid', [1.4, 2.8, 4.5], [22, 45, 71], 'from memory'),
  ...housing(edition, 2, 'flexible', [2.3, 4.5, 7.1], [37, 71, 113], 'from memory'),
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
