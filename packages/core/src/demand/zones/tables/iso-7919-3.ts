import { iso7919x3 } from '../../../source/iso-7919-3.ts';
import { clause } from '../../../source/source.ts';
import { clearanceShares } from '../clearance.ts';
import { type ZoneTable, zoneTable } from '../zone-table.ts';
import { micrometresPeakToPeak, perMinute } from './limits.ts';

/** Shaft vibration relative to the bearing: 4800, 9000 and 13200 micrometres over the root of the speed in r/min. */
export const iso7919x3tables: readonly ZoneTable[] = [
  zoneTable({
    name: 'iso-7919-3-shaft',
    title: 'ISO 7919-3, shaft relative to its bearing',
    cited: clause(iso7919x3, 'boundary curves', 'from memory'),
    reference: 'shaft-relative',
    boundaries: micrometresPeakToPeak([4800, 9000, 13_200]),
    withSpeed: { at: perMinute, exponent: -0.5 },
    clearanceShares,
    scope: {
      machines: 'coupled industrial machines on fluid-film bearings',
      speed: { from: 1000 * perMinute, to: 30_000 * perMinute },
    },
  }),
];
