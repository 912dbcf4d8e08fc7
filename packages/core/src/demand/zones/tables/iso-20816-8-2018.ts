import { iso20816x8edition2018 } from '../../../source/iso-20816-8-2018.ts';
import { clause } from '../../../source/source.ts';
import { type ZoneTable, zoneTable } from '../zone-table.ts';
import { millimetresPerSecond, perMinute, slowBand, type Three } from './limits.ts';

function part(name: string, title: string, limits: Three): ZoneTable {
  return zoneTable({
    name: `iso-20816-8-2018-${name}`,
    title: `ISO 20816-8:2018, ${title}`,
    cited: clause(iso20816x8edition2018, 'velocity', 'from memory'),
    reference: 'casing',
    boundaries: millimetresPerSecond(limits, slowBand),
    scope: {
      machines: `reciprocating compressor systems: ${title}`,
      speed: { from: 120 * perMinute, to: 1800 * perMinute },
    },
    doubt:
      'The edition judges displacement and acceleration too; those columns are not known here and do not follow from these.',
  });
}

export const iso20816x8edition2018tables: readonly ZoneTable[] = [
  part('foundation', 'foundation', [2, 3, 4.5]),
  part('frame-top', 'top of the frame', [5.3, 8, 12]),
  part('cylinder-lateral', 'cylinder, lateral', [8.7, 13, 19.5]),
  part('cylinder-rod', 'cylinder, rod direction', [10.7, 16, 24]),
  part('dampers', 'pulsation dampers', [12.7, 19, 28.5]),
  part('piping', 'piping', [12.7, 19, 28.5]),
];
