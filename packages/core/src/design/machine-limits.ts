import { limitDoubts } from '../demand/rules/rules.ts';
import { scopeFindings } from '../demand/zones/scope.ts';
import { type Boundaries, boundariesAt } from '../demand/zones/zone-table.ts';
import type { Finding } from '../finding/finding.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { type Answer, answerOf, fromAll, type Quantity, type Span, type Stated, stated } from '../quantity/index.ts';
import type { LimitStatement, PlantMachine } from './plant.ts';

/** The limits that hold for a machine, and what stands between them and their use. */
export interface MachineLimits {
  readonly boundaries: Answer<Boundaries>;
  readonly title: string;
  readonly findings: readonly Finding[];
}

/** Limits of the owner as they stand; those of a table at the speed of the machine, after a look at its scope. */
export function machineLimits(machine: PlantMachine, table: FrequencyTable): MachineLimits | undefined {
  const { limits } = machine;
  if (limits === undefined) return undefined;
  if (limits.from === 'owner') {
    return {
      boundaries: ownersBoundaries(limits, machine.name),
      title: limits.source,
      findings: limitDoubts({ at: machine.name, ...limits }),
    };
  }
  const speed = speedOf(table);
  const facts = {
    power: machine.facts.values.power,
    support: machine.facts.values.support,
    speed,
    ...(machine.facts.values.shaftHeight === undefined ? {} : { shaftHeight: machine.facts.values.shaftHeight }),
  };
  return {
    boundaries: boundariesAt(limits.table, speed.known ? speed.value.high : undefined),
    title: limits.table.title,
    findings: scopeFindings(facts, limits.table, machine.name),
  };
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

/** From the slowest to the fastest turn of the reference shaft. */
function speedOf(table: FrequencyTable): Stated<Span<'shaft speed'>> {
  const cells = table.shafts.find((row) => row.shaft === table.reference)?.cells ?? [];
  const at = (state: string) => cells.find((cell) => cell.state === state)?.frequency;
  const [low, high] = [at('lowest'), at('highest')];
  if (low?.known !== true || high?.known !== true) return { known: false };
  return stated({ low: low.value as Quantity<'shaft speed'>, high: high.value as Quantity<'shaft speed'> });
}
