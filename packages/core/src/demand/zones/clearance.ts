import { type Finding, finding } from '../../finding/finding.ts';
import { bareNumber, measured, measuredLevel, said } from '../../finding/measure.ts';
import { type Length, type Level, level, type Stated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { Boundaries, ZoneTable } from './zone-table.ts';

/** The share of the diametral bearing clearance that a boundary of shaft vibration never exceeds. */
export const clearanceShares = { ab: 0.4, bc: 0.6, cd: 0.7 } as const;

/** Boundaries held at their shares of a diametral clearance in metres; both are peak-to-peak. */
export function heldByClearance(boundaries: Boundaries, clearance: number, shares: ClearanceShares): Boundaries {
  const held = (each: Level, share: number) =>
    level(each.quantity, Math.min(each.value, share * clearance), each.detector, each.band);
  return {
    ab: held(boundaries.ab, shares.ab),
    bc: held(boundaries.bc, shares.bc),
    cd: held(boundaries.cd, shares.cd),
  };
}

export type ClearanceShares = Readonly<Record<keyof Boundaries, number>>;

/** Diametral clearance over journal diameter, as journal bearings are usually made: 1 to 3 per mille. */
export const usualClearance = { low: 0.001, high: 0.003 } as const;

const practice = clause(tradePractice, 'diametral clearance of 1 to 3 per mille of the journal');

/** What is known of the bearing that a shaft turns in. */
export interface JournalFacts {
  /** Diametral. Left out where nobody stated one. */
  readonly clearance?: Stated<Length>;
  readonly diameter?: Stated<Length>;
}

/**
 * What stands between a clearance and its use. A radial clearance entered for the diametral one halves the limits; it
 * shows as a clearance too small for its journal. A table that is to be held by the clearance asks for it.
 */
export function clearanceFindings(
  { clearance, diameter }: JournalFacts,
  table: ZoneTable,
  free: Boundaries | undefined,
  at: string,
): readonly Finding[] {
  const shares = table.clearanceShares;
  if (shares === undefined) return [];
  if (clearance?.known !== true) return [notStated(table, at)];
  return [...ratioFinding(clearance.value, diameter, at), ...governs(clearance.value, shares, free, table, at)];
}

function notStated(table: ZoneTable, at: string): Finding {
  return finding({
    rule: 'zones/clearance-not-stated',
    weight: 'question',
    at,
    found: 'no diametral clearance of the bearing',
    limit: `a clearance that holds the limits of ${table.title}`,
    because: 'The curve over speed may allow more than the bearing has room for.',
    remedy: ['state the diametral clearance from the bearing drawing'],
    sources: [table.cited],
    asks: 'What is the diametral clearance of the bearing, cold? Its drawing or the last measurement says.',
  });
}

function ratioFinding(clearance: number, diameter: JournalFacts['diameter'], at: string): readonly Finding[] {
  if (diameter?.known !== true) return [];
  const ratio = clearance / diameter.value;
  const perMille = (value: number) => `${(value * 1000).toFixed(2)} ‰`;
  const about = {
    at,
    found: said`a clearance of ${measured('length', clearance)} on ${measured('length', diameter.value)}: ${perMille(ratio)}`,
    limit: `${perMille(usualClearance.low)} to ${perMille(usualClearance.high)} of the journal`,
    sources: [practice],
    weight: 'question',
  } as const;
  if (ratio < usualClearance.low * (1 - 1e-9)) {
    return [
      finding({
        ...about,
        rule: 'zones/clearance-radial',
        because: said`It looks radial: twice as much, ${measured('length', 2 * clearance)}, would be usual. Taken as diametral it halves the limits.`,
        remedy: ['enter the diametral clearance, which is twice the radial one'],
        asks: 'Is the stated clearance radial or diametral? The bearing drawing says.',
      }),
    ];
  }
  if (ratio > usualClearance.high * (1 + 1e-9)) {
    return [
      finding({
        ...about,
        rule: 'zones/clearance-wide',
        because: 'A bearing so wide is worn, or the unit is wrong; the limits would then not be held by it.',
        remedy: ['check the unit of the clearance', 'check whether the bearing is worn'],
        asks: 'Was the clearance read in another unit, or is the bearing worn?',
      }),
    ];
  }
  return [];
}

function governs(
  clearance: number,
  shares: ClearanceShares,
  free: Boundaries | undefined,
  table: ZoneTable,
  at: string,
): readonly Finding[] {
  if (free === undefined) return [];
  const held = heldByClearance(free, clearance, shares);
  const names = { ab: 'A/B', bc: 'B/C', cd: 'C/D' } as const;
  return (Object.keys(names) as (keyof Boundaries)[])
    .filter((key) => held[key].value < free[key].value)
    .map((key) =>
      finding({
        rule: 'zones/clearance-governs',
        weight: 'notes',
        at,
        found: said`${names[key]} is ${measuredLevel(held[key])}: ${bareNumber(shares[key])} of the diametral clearance, not the curve`,
        limit: measured('length', clearance),
        because: said`The curve alone would give ${measuredLevel(free[key])}, more than the bearing has room for.`,
        remedy: ['check on the bearing drawing that the clearance is diametral'],
        sources: [table.cited],
      }),
    );
}
