import { iso10816x1edition1995 } from '../../../source/iso-10816-1-1995.ts';
import { clause } from '../../../source/source.ts';
import { type ZoneScope, type ZoneTable, zoneTable } from '../zone-table.ts';
import { kilowatt, millimetresPerSecond, type Three, usualBand } from './limits.ts';

function classTable(numeral: 'I' | 'II' | 'III' | 'IV', limits: Three, scope: ZoneScope): ZoneTable {
  return zoneTable({
    name: `iso-10816-1-1995-class-${numeral.toLowerCase()}`,
    title: `ISO 10816-1:1995, class ${numeral}`,
    cited: clause(iso10816x1edition1995, 'Annex B', 'from memory'),
    reference: 'casing',
    boundaries: millimetresPerSecond(limits, usualBand),
    scope,
    doubt: 'The edition is old: a part for the kind of machine, where there is one, takes its place.',
  });
}

export const iso10816x1edition1995tables: readonly ZoneTable[] = [
  classTable('I', [0.71, 1.8, 4.5], {
    machines: 'parts of engines and machines, electric motors',
    power: { upTo: 15 * kilowatt },
  }),
  classTable('II', [1.12, 2.8, 7.1], {
    machines: 'medium machines of 15 to 75 kW without special foundations, up to 300 kW on special foundations',
    power: { above: 15 * kilowatt, upTo: 300 * kilowatt },
  }),
  classTable('III', [1.8, 4.5, 11.2], { machines: 'large prime movers and rotating machines', support: 'rigid' }),
  classTable('IV', [2.8, 7.1, 18], { machines: 'large prime movers and rotating machines', support: 'flexible' }),
];
