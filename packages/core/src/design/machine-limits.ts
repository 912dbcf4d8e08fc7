import { limitDoubts } from '../demand/rules/rules.ts';
import { clearanceFindings, type JournalFacts } from '../demand/zones/clearance.ts';
import { scopeFindings } from '../demand/zones/scope.ts';
import { type Boundaries, boundariesAt, type ZoneTable } from '../demand/zones/zone-table.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { kindOf } from '../machine/kinds.ts';
import type { Train } from '../machine/train.ts';
import {
  type Answer,
  answerOf,
  fromAll,
  type Length,
  type Quantity,
  type Span,
  type Stated,
  stated,
} from '../quantity/index.ts';
import type { LimitStatement, PlantMachine, PlantPoint } from './plant.ts';

/** The limits that hold for a machine or a point, and what stands between them and their use. */
export interface MachineLimits {
  readonly boundaries: Answer<Boundaries>;
  readonly title: string;
  /** As they are stated, and the highest speed at which a table that follows it was read, in hertz. */
  readonly stated: LimitStatement;
  readonly speed?: number;
  /** Diametral clearance of the bearing they are held by, where one is stated. */
  readonly clearance?: Stated<Length>;
  readonly findings: readonly Finding[];
}

/** Limits of the owner as they stand; those of a table at the speed of the machine, after a look at its scope. */
export function machineLimits(machine: PlantMachine, table: FrequencyTable): MachineLimits | undefined {
  if (machine.limits === undefined) return undefined;
  return limitsAt(machine.limits, machine.name, machine, table, table.reference);
}

/** Limits that a point states for itself; its shaft diameter tells whether a clearance looks radial. */
export function pointLimits(
  machine: PlantMachine,
  point: PlantPoint,
  table: FrequencyTable,
): MachineLimits | undefined {
  if (point.limits === undefined) return undefined;
  const { shaftDiameter } = point.statement.surroundings.values;
  return limitsAt(
    point.limits,
    `${machine.name}/${point.statement.name}`,
    machine,
    table,
    point.shaft ?? table.reference,
    shaftDiameter,
  );
}

function limitsAt(
  limits: LimitStatement,
  at: string,
  machine: PlantMachine,
  table: FrequencyTable,
  shaft: string,
  diameter?: Stated<Length>,
): MachineLimits {
  if (limits.from === 'owner') {
    return {
      boundaries: ownersBoundaries(limits, at),
      title: limits.source,
      stated: limits,
      findings: limitDoubts({ at, ...limits }),
    };
  }
  const speed = speedOf(table, shaft);
  const facts = {
    power: machine.facts.values.power,
    support: machine.facts.values.support,
    speed,
    ...(machine.facts.values.shaftHeight === undefined ? {} : { shaftHeight: machine.facts.values.shaftHeight }),
  };
  // At rest nothing vibrates: a table that follows the speed has no limits there.
  const highest = speed.known && speed.value.high > 0 ? speed.value.high : undefined;
  const { clearance } = limits;
  const free = boundariesAt(limits.table, highest);
  const journal: JournalFacts = {
    ...(clearance === undefined ? {} : { clearance }),
    ...(diameter === undefined ? {} : { diameter }),
  };
  return {
    boundaries: heldBoundaries(limits, highest, at),
    title: limits.table.title,
    stated: limits,
    ...(highest === undefined ? {} : { speed: highest }),
    ...(clearance === undefined ? {} : { clearance }),
    findings: [
      ...shakingFindings(machine.train, limits.table, at),
      ...scopeFindings(facts, limits.table, at),
      ...clearanceFindings(journal, limits.table, free.known ? free.value : undefined, at),
    ],
  };
}

/** Zones of severity judge a machine that should stand still; one that works by shaking is outside all of them. */
function shakingFindings(train: Train, table: ZoneTable, at: string): readonly Finding[] {
  const shaking = train.elements.find((element) => kindOf(element).shakesByDesign === true);
  if (shaking === undefined) return [];
  return [
    finding({
      rule: 'design/shakes-by-design',
      weight: 'blocks-issue',
      at,
      found: `${table.title}, for a machine with '${shaking.name}'`,
      limit: 'limits of its own: a window about its motion, trends of its bearings',
      because: 'The machine vibrates because it is meant to: by such a table it is worst when it works best.',
      remedy: ['state the window of its motion', "enter the owner's own limits with their source"],
      sources: [table.cited],
    }),
  ];
}

/** A clearance that is unknown leaves the limits unknown; one that nobody speaks of leaves the curve alone, and is asked. */
function heldBoundaries(
  { table, clearance }: LimitStatement & { readonly from: 'table' },
  speed: number | undefined,
  at: string,
): Answer<Boundaries> {
  if (clearance === undefined || table.clearanceShares === undefined) return boundariesAt(table, speed);
  const known = answerOf(clearance, at, 'diametral clearance');
  return known.known ? boundariesAt(table, speed, known.value) : known;
}

function ownersBoundaries(limits: LimitStatement & { readonly from: 'owner' }, of: string): Answer<Boundaries> {
  return fromAll(
    {
      ab: answerOf(limits.aB, of, 'boundary A/B'),
      bc: answerOf(limits.bC, of, 'boundary B/C'),
      cd: answerOf(limits.cD, of, 'boundary C/D'),
    },
    (known) => known,
  );
}

/** From the slowest to the fastest turn of a shaft. */
function speedOf(table: FrequencyTable, shaft: string): Stated<Span<'shaft speed'>> {
  const cells = table.shafts.find((row) => row.shaft === shaft)?.cells ?? [];
  const at = (state: string) => cells.find((cell) => cell.state === state)?.frequency;
  const [low, high] = [at('lowest'), at('highest')];
  if (low?.known !== true || high?.known !== true) return { known: false };
  return stated({ low: low.value as Quantity<'shaft speed'>, high: high.value as Quantity<'shaft speed'> });
}
