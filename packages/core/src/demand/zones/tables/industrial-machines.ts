import { type Acquaintance, clause, type Source } from '../../../source/source.ts';
import { type Support, type ZoneScope, type ZoneTable, zoneTable } from '../zone-table.ts';
import { kilowatt, micrometres, millimetresPerSecond, perMinute, slowBand, type Three, usualBand } from './limits.ts';

/** Housing vibration of industrial machines in one edition: what its tables of both groups have in common. */
export interface HousingEdition {
  /** `iso-20816-3-2022`. */
  readonly name: string;
  /** `ISO 20816-3:2022`. */
  readonly title: string;
  readonly source: Source;
  readonly scope: Pick<ZoneScope, 'machines' | 'excluded'>;
  /** Upper power of group 1 in watts. */
  readonly largestPower: number;
  /** Highest shaft speed in hertz. */
  readonly highestSpeed: number;
  readonly doubt: string;
}

/** Machines above 300 kW, and those of 15 to 300 kW; electrical ones by their shaft height. */
function groupScope(group: 1 | 2, largestPower: number): Pick<ZoneScope, 'power' | 'shaftHeight'> {
  return group === 1
    ? { power: { above: 300 * kilowatt, upTo: largestPower }, shaftHeight: { from: 0.315 } }
    : { power: { above: 15 * kilowatt, upTo: 300 * kilowatt }, shaftHeight: { from: 0.16, below: 0.315 } };
}

/** The two tables of a group on one support: velocity in mm/s rms, known as `how` says, and displacement in µm rms. */
export function housing(
  edition: HousingEdition,
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
      ...edition.scope,
      ...groupScope(group, edition.largestPower),
      speed: { from: 120 * perMinute, to: edition.highestSpeed },
      support,
    },
    doubt: edition.doubt,
  } as const;
  const name = `${edition.name}-group-${group}-${support}`;
  const title = `${edition.title}, group ${group}, ${support} support`;
  return [
    zoneTable({
      ...common,
      name: `${name}-velocity`,
      title: `${title}, velocity`,
      cited: clause(edition.source, 'Annex A', how),
      boundaries: millimetresPerSecond(velocity, usualBand),
    }),
    zoneTable({
      ...common,
      name: `${name}-displacement`,
      title: `${title}, displacement`,
      cited: clause(edition.source, 'Annex A', 'from memory'),
      boundaries: micrometres(displacement, usualBand),
    }),
  ];
}
