import { heard, type Running, shaftSpeedIn } from '../acquisition/set-kind.ts';
import { type PointSettings, settingsFor } from '../acquisition/sets.ts';
import { type WindowSetPoints, windowSetPoints } from '../alarm/motion-window.ts';
import { demand } from '../demand/demand.ts';
import type { LineLookup } from '../demand/frequency-reference.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { proposals } from '../demand/proposals.ts';
import { pointDoubts } from '../demand/rules/rules.ts';
import type { TargetStatement } from '../demand/statement.ts';
import type { Boundaries } from '../demand/zones/zone-table.ts';
import { blocks, type Finding, finding, inOrderOfWeight } from '../finding/finding.ts';
import { areaComparison } from '../hazardous-area/area-comparison.ts';
import { areaFindings } from '../hazardous-area/area-findings.ts';
import { type JudgedArea, judgedArea } from '../hazardous-area/judged-area.ts';
import { type ChannelUse, sharedChannels } from '../hazardous-area/shared-channels.ts';
import { type Coincidence, coincidences } from '../machine/coincidences.ts';
import { trainFindings } from '../machine/findings.ts';
import { type FrequencyTable, frequencyTable } from '../machine/frequency-table.ts';
import { lineNamed } from '../machine/line-abbreviations.ts';
import { type Answer, answerOf, type Level, type Motion, thenAnswer, unanswered } from '../quantity/index.ts';
import { type Appraisal, appraisal } from '../selection/appraisal.ts';
import type { WiredPoint } from '../wiring/graph.ts';
import type { GroundLoop } from '../wiring/ground-loops.ts';
import { plantWiring } from '../wiring/plant-wiring.ts';
import { judgementFindings } from './judgement-findings.ts';
import { type MachineLimits, machineLimits, pointLimits } from './machine-limits.ts';
import type { Plant, PlantMachine, PlantPoint } from './plant.ts';
import { type PointAlarms, pointAlarms } from './point-alarms.ts';
import { budgetFindings, type PointBudgets, pointBudgets } from './point-budgets.ts';
import { type PointProbes, pointProbes } from './point-probes.ts';

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
  /** Limits the point states for itself, in place of those of its machine. */
  readonly limits?: MachineLimits;
  /** Boundaries of the zones its readings are held against, its own or those of its machine. */
  readonly boundaries: Answer<Boundaries>;
  /** What its probes read, where an arrangement of probes is stated. */
  readonly probes?: PointProbes;
  /** Set points about a motion the machine works by, where one is stated. */
  readonly window?: WindowSetPoints;
  /** The loop against the classified area it stands in; absent where there is no area, or no chain to compare. */
  readonly area: JudgedArea | undefined;
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
  /** Every independent ground loop the chosen chains close in the plant. */
  readonly loops: readonly GroundLoop[];
  /** Every finding of the plant, gravest first. */
  readonly findings: readonly Finding[];
  /** `proven` where nothing blocks and nothing is left open; against the stated targets and no others. */
  readonly verdict: 'proven' | 'open questions' | 'not proven';
}

/** Designs a plant as stated. `seed` repeats the trials. */
export function design(plant: Plant, seed: number): Design {
  return assembledDesign(
    plant,
    plant.machines.map((machine) => designedMachine(plant, machine, seed)),
  );
}

/** The design of a plant from its machines, each designed before: what only the plant as a whole can tell is added. */
export function assembledDesign(plant: Plant, machines: readonly DesignedMachine[]): Design {
  const wiring = plantWiring(machines.flatMap(wiredPoints), plant.separation);
  const findings = inOrderOfWeight(
    machines
      .flatMap((machine) => [...machine.findings, ...machine.points.flatMap((point) => point.findings)])
      .concat(sharedChannels(channelUses(machines)), wiring.findings, nothingToProve(machines)),
  );
  return { plant, machines, loops: wiring.loops, findings, verdict: verdictOf(findings) };
}

/** The points of a machine that have a chain, as far as their wiring goes. */
export function wiredPoints({ points }: DesignedMachine): readonly WiredPoint[] {
  return points.flatMap(({ point, stated: { wiring }, appraisal: judged }) =>
    judged === undefined
      ? []
      : [
          {
            point,
            chain: judged.prediction.chain,
            judgements: judged.judgements,
            ...(wiring === undefined ? {} : { wiring }),
          },
        ],
  );
}

/** Which tagged barrier each loop of the plant runs through. */
function channelUses(machines: readonly DesignedMachine[]): readonly ChannelUse[] {
  return machines.flatMap((machine) =>
    machine.points.flatMap(({ point, area }) => {
      const tag = area?.loop.barrier?.tag;
      return tag === undefined ? [] : [{ point: point.of, tag }];
    }),
  );
}

function verdictOf(findings: readonly Finding[]): Design['verdict'] {
  if (blocks(findings)) return 'not proven';
  return findings.some((each) => each.weight === 'question') ? 'open questions' : 'proven';
}

/** Designs one machine of a plant; it needs nothing of the other machines. `seed` repeats the trials. */
export function designedMachine(plant: Plant, machine: PlantMachine, seed: number): DesignedMachine {
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

/** A line of a frequency table by name, or letters of the trade, and state; what is not there is named. */
export function frequencyAtState(table: FrequencyTable, name: string, state: string): Answer<number> {
  return thenAnswer(lineNamed(table, name), (row) => {
    const cell = row.cells.find((each) => each.state === state);
    return cell?.frequency ?? unanswered([{ of: table.of, what: `operating state '${state}'` }]);
  });
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
  const own = pointLimits(machine, stated, table);
  const boundaries = (own ?? limits)?.boundaries ?? unanswered([{ of: machine.name, what: 'limits' }]);
  const running = runningOf(machine, stated);
  const alarms =
    stated.alarm === undefined
      ? undefined
      : pointAlarms(point, stated.alarm, boundaries, chain, slowestTurn(table, running));
  const compared = chain === undefined ? undefined : areaComparison(point, chain);
  const area = compared === undefined ? undefined : judgedArea(compared, judged?.judgements ?? []);
  const settings: PointSettings =
    chain?.transducer.signal === 'overall' ? { sets: [], unknown: [] } : settingsFor(point, table, running);
  const clearance = (own ?? limits)?.clearance;
  const probes =
    stated.probes === undefined
      ? undefined
      : pointProbes(stated.probes, { point, chain, table, shaft: stated.shaft, clearance });
  const budgets =
    judged === undefined ? [] : pointBudgets(point, judged.prediction, plant.allowances, seed, readingAtSpeed(stated));
  return {
    stated,
    point,
    appraisal: judged,
    proposals: proposals(heard(table, point), stated.statement, boundaries.known ? boundaries.value : undefined),
    settings,
    budgets,
    alarms,
    ...(own === undefined ? {} : { limits: own }),
    boundaries,
    ...(probes === undefined ? {} : { probes }),
    ...(stated.window === undefined ? {} : { window: windowSetPoints(stated.window, lineLookup(table), point.of) }),
    area,
    findings: [
      ...pointDoubts({ statement: stated.statement, point }),
      ...(judged === undefined ? [noChain(point)] : judgementFindings(judged.judgements, point.of, desirableOf(point))),
      ...budgetFindings(budgets, point.of),
      ...(own?.findings ?? []),
      ...(probes?.findings ?? []),
      ...(alarms?.findings ?? []),
      ...(area === undefined ? [] : areaFindings(area)),
    ],
  };
}

function desirableOf(point: MeasuringPoint): ReadonlySet<string> {
  return new Set(point.targets.filter((target) => target.weight === 'desirable').map((target) => target.name));
}

/** The shaft a point looks at, how long the machine takes to its highest speed, and how far its speed strays. */
function runningOf(machine: PlantMachine, point: PlantPoint): Running {
  const { runUp } = machine.facts.values;
  const { wander } = machine.train.operation;
  return {
    ...(point.shaft === undefined ? {} : { shaft: point.shaft }),
    ...(runUp === undefined ? {} : { runUp: answerOf<number>(runUp, machine.name, 'run-up time') }),
    ...(wander === undefined ? {} : { wander: answerOf<number>(wander, machine.name, 'how far the speed strays') }),
  };
}

/** What the point reads at speed: beside its slow roll, otherwise as its baseline. */
function readingAtSpeed({ probes, alarm }: PlantPoint): Level<Motion> | undefined {
  const beside = probes?.flatMap((each) => (each.kind === 'slow-roll' ? (each.sheet.values.running ?? []) : []))[0];
  if (beside?.known === true) return beside.value;
  return alarm?.baseline.known === true ? alarm.baseline.value : undefined;
}

function slowestTurn(table: FrequencyTable, running: Running): Answer<number> {
  return shaftSpeedIn(table, running, 'lowest');
}

/** Where nothing is asked for, nothing is proven: an empty plant must not read as a proven one. */
function nothingToProve(machines: readonly DesignedMachine[]): readonly Finding[] {
  const targets = machines.flatMap((machine) => machine.points.flatMap((point) => point.point.targets));
  if (targets.length > 0) return [];
  return [
    finding({
      rule: 'design/nothing-to-prove',
      weight: 'question',
      at: 'plant',
      found: 'no target at any measuring point',
      limit: 'at least one target at one point',
      because: 'A verdict is a comparison with stated targets; without one it would say nothing.',
      remedy: ['state a measuring point and what it must capture'],
      sources: [],
      asks: 'What must be seen on these machines, and where?',
    }),
  ];
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
