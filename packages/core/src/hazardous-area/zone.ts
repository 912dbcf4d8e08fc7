import type { HazardousZone } from '../demand/hazardous-area.ts';
import { iec60079x0 } from '../source/iec-60079-0.ts';
import { type Clause, clause } from '../source/source.ts';
import type { ProtectionLevel } from './protection-level.ts';

interface ZoneEntry {
  readonly meaning: string;
  readonly needs: ProtectionLevel;
}

/**
 * What each zone asks of equipment. A division does not tell zone 0 from zone 1, so division 1 is taken as the stricter.
 * Source: IEC 60079-0 (from memory).
 */
const entries: Readonly<Record<HazardousZone, ZoneEntry>> = {
  '0': { meaning: 'gas, continuously or for long', needs: 'Ga' },
  '1': { meaning: 'gas, now and then in normal use', needs: 'Gb' },
  '2': { meaning: 'gas, not in normal use, and then briefly', needs: 'Gc' },
  '20': { meaning: 'dust cloud, continuously or for long', needs: 'Da' },
  '21': { meaning: 'dust cloud, now and then in normal use', needs: 'Db' },
  '22': { meaning: 'dust cloud, not in normal use, and then briefly', needs: 'Dc' },
  'division 1': { meaning: 'about zones 0 and 1 together', needs: 'Ga' },
  'division 2': { meaning: 'about zone 2', needs: 'Gc' },
};

/** The lowest equipment protection level a zone accepts. */
export function requiredLevel(zone: HazardousZone): ProtectionLevel {
  return entries[zone].needs;
}

export function zoneMeaning(zone: HazardousZone): string {
  return entries[zone].meaning;
}

/** `Zone 1`, `Division 2`. */
export function zoneName(zone: HazardousZone): string {
  return zone.startsWith('division') ? `D${zone.slice(1)}` : `Zone ${zone}`;
}

export const zoneSource: Clause = clause(iec60079x0, 'protection levels by zone');
