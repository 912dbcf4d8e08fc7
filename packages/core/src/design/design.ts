import { type PointSettings, settingsFor } from '../acquisition/sets.ts';
import { demand } from '../demand/demand.ts';
import type { LineLookup } from '../demand/frequency-reference.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { proposals } from '../demand/proposals.ts';
import { pointDoubts } from '../demand/rules/rules.ts';
import type { TargetStatement } from '../demand/statement.ts';
import { blocks, type Finding, finding, inOrderOfWeight } from '../finding/finding.ts';
import { type Coincidence, coincidences } from '../machine/coincidences.ts';
import { trainFindings } from '../machine/findings.ts';
import { type FrequencyTable, frequencyTable } from '../machine/frequency-table.ts';
import { type Answer, answer, nearest, unanswered } from '../quantity/index.ts';
import { type Appraisal, appraisal } from '../selection/appraisal.ts';
import { judgementFindings } from './judgement-findings.ts';
import { type MachineLimits, machineLimits } from './machine-limits.ts';
import type { Plant, PlantMachine, PlantPoint } from './plant.ts';
import { type PointAlarms, pointAlarms } from './point-alarms.ts';
import { budgetFindings, type PointBudgets, pointBudgets } from './point-budgets.ts';

/** A measuring point as designed: what it must capture, the chain chosen for it, and what follows from both. */
export interface DesignedPoint {
  readonly stated: PlantPoint;
  readonly point: MeasuringPoint;
  /** The chosen chain judged; absent where none is chosen. */
  readonly appraisal: Appraisal | undefined;
  /** Targets the machine suggests and the point does not have. */
  readonly proposals: readonly TargetStatement[];
  readonly settings: PointSettings;
  readonly budgets: PointBudgets;
  readonly alarms: PointAlarms | undefined;
  readonly findings: readonly Finding[];
}

export interface DesignedMachine {
  readonly stated: PlantMachine;
  readonly frequencies: FrequencyTable;
  readonly coincidences: readonly Coincidence[];
  readonly limits: MachineLimits | undefined;
  readonly points: readonly DesignedPoint[];
  /** Of the machine itself, without those of its points. */
  readonly findings: readonly Finding[];
}

/** The one record between computation and every output. */
export interface Design {
  readonly plant: Plant;
  readonly machines: readonly DesignedMachine[];
  /** Every finding of the plant, gravest first. */
  readonly findings: readonly Finding[];
  /** `proven` where nothing blocks and nothing is left open; against the stated targets and no others. */
  readonly verdict: 'proven' | 'open questions' | 'not proven';
}

/** Designs a plant as stated. `seed` repeats the trials. */
export function design(plant: Plant, seed: number): Design {
  const machines = plant.machines.map((machine) => designedMachine(plant, machine, seed));
  const findings = inOrderOfWeight(
    machines.flatMap((machine) => [...machine.findings, ...machine.points.flatMap((point) => point.findings)]),
  );
  return { plant, machines, findings, verdict: verdictOf(findings) };
}

function verdictOf(findings: readonly Finding[]): Design['verdict'] {
  if (blocks(findings)) return 'not proven';
  return findings.some((each) => each.weight === 'question') ? 'open questions' : 'proven';
}

function designedMachine(plant: Plant, machine: PlantMachine, seed: number): DesignedMachine {
  const frequencies = frequencyTable(machine.train);
  const limits = machineLimits(machine, frequencies);
  return {
    stated: machine,
    frequencies,
    coincidences: coincidences(machine.train),
    limits,
    findings: [...trainFindings(machine.train), ...(limits?.findings ?? [])],
    points: machine.points.map((point) => designedPoint(plant, machine, point, frequencies, limits, seed)),
  };
}

/** The lookup by which targets name lines of this machine. */
export function lineLookup(table: FrequencyTable): LineLookup {
  return (name, state) => frequencyAtState(table, name, state);
}

/** A line of a frequency table by name and state; what is not there is named, with what comes nearest. */
export function frequencyAtState(table: FrequencyTable, name: string, state: string): Answer<number> {
  const row = table.rows.find((each) => each.line.name === name);
  if (row === undefined) {
    const names = table.rows.map((each) => each.line.name);
    const near = nearest(name, names);
    return unanswered([{ of: table.of, what: `line '${name}'${near === undefined ? '' : ` (is it '${near}'?)`}` }]);
  }
  const cell = row.cells.find((each) => each.state === state);
  return cell?.frequency ?? unanswered([{ of: table.of, what: `operating state '${state}'` }]);
}

function designedPoint(
  plant: Plant,
  machine: PlantMachine,
  stated: PlantPoint,
  table: FrequencyTable,
  limits: MachineLimits | undefined,
  seed: number,
): DesignedPoint {
  const point = demand(stated.statement, machine.name, lineLookup(table));
  const judged =
    stated.way === undefined || stated.chosen === undefined
      ? undefined
      : appraisal(point, { ...stated.way, ...stated.chosen }, plant.policy);
  const chain = judged?.prediction.chain;
  const boundaries = limits?.boundaries ?? unanswered([{ of: machine.name, what: 'limits' }]);
  const alarms =
    stated.alarm === undefined ? undefined : pointAlarms(point, stated.alarm, boundaries, chain, slowestTurn(table));
  const settings: PointSettings =
    chain?.transducer.signal === 'overall' ? { sets: [], unknown: [] } : settingsFor(point, table);
  const budgets = judged === undefined ? [] : pointBudgets(point, judged.prediction, plant.allowances, seed);
  return {
    stated,
    point,
    appraisal: judged,
    proposals: proposals(table, stated.statement, boundaries.known ? boundaries.value : undefined),
    settings,
    budgets,
    alarms,
    findings: [
      ...pointDoubts({ statement: stated.statement, point }),
      ...(judged === undefined ? [noChain(point)] : judgementFindings(judged.judgements, point.of, desirableOf(point))),
      ...budgetFindings(budgets, point.of),
      ...(alarms?.findings ?? []),
    ],
  };
}

function desirableOf(point: MeasuringPoint): ReadonlySet<string> {
  return new Set(point.targets.filter((target) => target.weight === 'desirable').map((target) => target.name));
}

function slowestTurn(table: FrequencyTable) {
  const shaft = table.shafts.find((row) => row.shaft === table.reference);
  return shaft?.cells.find((cell) => cell.state === 'lowest')?.frequency ?? answer(0);
}

function noChain(point: MeasuringPoint): Finding {
  return finding({
    rule: 'design/no-chain',
    weight: 'question',
    at: point.of,
    found: 'no transducer and mount chosen',
    limit: 'a chain from the surface to the input',
    because: 'A point without a chain measures nothing; its targets are uncovered.',
    remedy: ['choose from the shortlist of the point', 'record why it is not measured'],
    sources: [],
    asks: 'Which transducer, on which mount, is to stand here?',
  });
}
