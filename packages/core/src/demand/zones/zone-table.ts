import {
  type Answer,
  answer,
  type Band,
  comparable,
  fromAll,
  type Level,
  level,
  Refusal,
  showLevel,
  unanswered,
} from '../../quantity/index.ts';
import { type Acquaintance, type Clause, clause, source } from '../../source/source.ts';
import type { Reference } from '../target.ts';
import { heldByClearance } from './clearance.ts';

export const supports = ['rigid', 'flexible'] as const;
/** How a machine stands: rigid where its lowest natural frequency is well above the main excitation. */
export type Support = (typeof supports)[number];

/** The levels between zones A and B, B and C, C and D. */
export interface Boundaries {
  readonly ab: Level;
  readonly bc: Level;
  readonly cd: Level;
}

/** Above one value and up to another, the upper one included; either may be open. SI. */
export interface Extent {
  readonly above?: number;
  readonly upTo?: number;
}

/** The machines a table speaks of. What is not stated here the table leaves open. */
export interface ZoneScope {
  /** The kind of machine, and what is left out, in words: nobody but a reader can check them. */
  readonly machines: string;
  readonly excluded?: string;
  readonly power?: Extent;
  /** Shaft height of electrical machines, which then decides instead of the power: from one value to below another. */
  readonly shaftHeight?: { readonly from: number; readonly below?: number };
  /** Shaft speeds in hertz, both ends included. */
  readonly speed?: { readonly from: number; readonly to: number };
  readonly support?: Support;
}

/** Limits of one quantity for one class of machines in one edition of a standard, or in an owner's specification. */
export interface ZoneTable {
  readonly name: string;
  readonly title: string;
  /** The edition and place, and how these very numbers are known. */
  readonly cited: Clause;
  readonly reference: Reference;
  readonly boundaries: Boundaries;
  /** Where the boundaries follow the speed: they hold at `at` hertz, elsewhere times (n/at)^exponent. */
  readonly withSpeed?: { readonly at: number; readonly exponent: number };
  /** Where the boundaries are peak-to-peak of a shaft in its bearing: the share of the diametral clearance each never exceeds. */
  readonly clearanceShares?: Readonly<Record<keyof Boundaries, number>>;
  /** The band that replaces the usual one below a shaft speed in hertz. */
  readonly slowBand?: { readonly below: number; readonly band: Band };
  readonly scope: ZoneScope;
  /** What is uncertain about these numbers. */
  readonly doubt?: string;
}

/** A table whose boundaries are of one quantity, detector and band and rise from A/B to C/D; refuses any other. */
export function zoneTable(definition: ZoneTable): ZoneTable {
  const { ab, bc, cd } = definition.boundaries;
  comparable(ab, bc);
  comparable(bc, cd);
  if (!(ab.value > 0 && ab.value < bc.value && bc.value < cd.value)) {
    throw new Refusal({
      read: `${definition.name}: ${showLevel(ab)}, ${showLevel(bc)}, ${showLevel(cd)}`,
      expected: 'boundaries above zero that rise from A/B over B/C to C/D',
    });
  }
  return definition;
}

export interface OwnersTable {
  readonly name: string;
  readonly title: string;
  readonly boundaries: Boundaries;
  readonly reference: Reference;
  /** Whose limits these are: `Plant specification PS-114`, and how the writer knows them. */
  readonly source: { readonly title: string; readonly how: Acquaintance; readonly place?: string };
  readonly scope?: ZoneScope;
}

/** Limits an owner states: the same record as a table of a standard, with the owner's document as its source. */
export function ownersTable(definition: OwnersTable): ZoneTable {
  const { title, how, place } = definition.source;
  return zoneTable({
    name: definition.name,
    title: definition.title,
    boundaries: definition.boundaries,
    reference: definition.reference,
    cited: clause(source({ id: definition.name, title, how, note: 'Stated by the owner of the plant.' }), place),
    scope: definition.scope ?? { machines: 'the machines the owner states them for' },
  });
}

/**
 * The boundaries at a shaft speed in hertz. A table that follows the speed, or has a wider band for slow machines, is
 * unanswered without the speed. A diametral clearance in metres holds the boundaries of a table that is meant for it.
 */
export function boundariesAt(table: ZoneTable, speed: number | undefined, clearance?: number): Answer<Boundaries> {
  const free = freeBoundaries(table, speed);
  const shares = table.clearanceShares;
  if (clearance === undefined || shares === undefined) return free;
  if (!(clearance > 0)) throw new Refusal({ read: `${clearance} m`, expected: 'a diametral clearance above zero' });
  return fromAll({ free }, (known) => heldByClearance(known.free, clearance, shares));
}

function freeBoundaries(table: ZoneTable, speed: number | undefined): Answer<Boundaries> {
  const { withSpeed, slowBand, boundaries } = table;
  if (withSpeed === undefined && slowBand === undefined) return answer(boundaries);
  if (speed === undefined) return unanswered([{ of: table.title, what: 'shaft speed' }]);
  if (!(speed > 0)) throw new Refusal({ read: `${speed} Hz`, expected: 'a shaft speed above zero' });
  const factor = withSpeed === undefined ? 1 : (speed / withSpeed.at) ** withSpeed.exponent;
  const slow = slowBand !== undefined && speed < slowBand.below * (1 - 1e-9);
  const moved = (each: Level) =>
    level(each.quantity, each.value * factor, each.detector, slow ? slowBand.band : each.band);
  return answer({ ab: moved(boundaries.ab), bc: moved(boundaries.bc), cd: moved(boundaries.cd) });
}
