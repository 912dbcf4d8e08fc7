import { iso10816x7edition2009 } from '../../../source/iso-10816-7-2009.ts';
import { clause } from '../../../source/source.ts';
import { type Extent, type ZoneTable, zoneTable } from '../zone-table.ts';
import { kilowatt, micrometresPeakToPeak, millimetresPerSecond, type Three, usualBand } from './limits.ts';

type Category = 'I' | 'II';

const machines: Readonly<Record<Category, string>> = {
  I: 'rotodynamic pumps of category I, where reliability, availability or safety asks most',
  II: 'rotodynamic pumps of category II, general use',
};

function velocity(category: Category, size: 'up to' | 'above', power: Extent, limits: Three): ZoneTable {
  return zoneTable({
    name: `iso-10816-7-2009-category-${category.toLowerCase()}-${size.replace(' ', '-')}-200-kw`,
    title: `ISO 10816-7:2009, category ${category}, ${size} 200 kW`,
    cited: clause(iso10816x7edition2009, 'velocity', 'from memory'),
    reference: 'casing',
    boundaries: millimetresPerSecond(limits, usualBand),
    scope: { machines: machines[category], power },
    doubt: 'The lower end of the band for slow pumps, 1 or 2 Hz, is uncertain.',
  });
}

function displacement(category: Category, limits: Three): ZoneTable {
  return zoneTable({
    name: `iso-10816-7-2009-category-${category.toLowerCase()}-slow`,
    title: `ISO 10816-7:2009, category ${category}, displacement at low speed`,
    cited: clause(iso10816x7edition2009, 'displacement at low speed', 'from memory'),
    reference: 'casing',
    boundaries: micrometresPeakToPeak(limits),
    scope: { machines: `${machines[category]}, running slowly` },
    doubt: 'Below which speed this criterion is used, and its band, is uncertain.',
  });
}

const small = { upTo: 200 * kilowatt };
const large = { above: 200 * kilowatt };

export const iso10816x7edition2009tables: readonly ZoneTable[] = [
  velocity('I', 'up to', small, [2.5, 4, 6.6]),
  velocity('I', 'above', large, [3.5, 5, 7.6]),
  velocity('II', 'up to', small, [3.2, 5.1, 8.5]),
  velocity('II', 'above', large, [4.2, 6.1, 9.5]),
  displacement('I', [50, 80, 130]),
  displacement('II', [65, 105, 165]),
];
