import {
  blocks,
  coincidences,
  demand as demandOf,
  design as designOf,
  type Finding,
  type FrequencyTable,
  frequencyTable,
  lineLookup,
  type MachineLimits,
  type MeasuringPoint,
  machineLimits,
  machinePositions,
  type PlantMachine,
  type PlantPoint,
  proposals,
  questions,
  type TargetStatement,
  trainFindings,
  valueIfStated,
} from '@soundpost/core';
import { always, argument, command, optionalArgument } from './command.ts';
import { findingJson } from './json/finding-json.ts';
import { coincidenceJson, frequencyTableJson } from './json/frequency-table-json.ts';
import { limitsJson } from './json/limits-json.ts';
import { pointJson, proposalJson } from './json/point-json.ts';
import { positionsJson } from './json/positions-json.ts';
import { blank, heading, type Line, paragraph } from './layout/line.ts';
import type { Manner } from './manner.ts';
import { pointCalled } from './plant/point-called.ts';
import { readPlant } from './plant/read-plant.ts';
import { type Unknown, unknownOfMachine, unknownOfPoint } from './plant/unknowns.ts';
import { seed } from './seed.ts';
import { findingsLines } from './text/finding-text.ts';
import { coincidenceLines, frequencyLines, machineHeading } from './text/frequency-table-text.ts';
import { limitsLines } from './text/limits-text.ts';
import { placeLines, pointHeading, proposalLines, targetLines } from './text/point-text.ts';
import { positionLines } from './text/positions-text.ts';
import { questionLines } from './text/questions-text.ts';
import { capital, counted } from './text/values-text.ts';

interface MachineDemand {
  readonly machine: PlantMachine;
  readonly table: FrequencyTable;
  readonly findings: readonly Finding[];
  readonly limits: MachineLimits | undefined;
  readonly points: readonly PointDemand[];
}

interface PointDemand {
  readonly point: MeasuringPoint;
  readonly stated: PlantPoint;
  readonly proposals: readonly TargetStatement[];
}

export const demand = command({
  name: 'demand',
  summary: 'What the points of a plant must capture',
  description:
    'Derives the frequencies of each machine over its speed range, with exact ratios; says which of them come close and ' +
    'which line spacing tells them apart; and shows what each measuring point must capture, in numbers, with its origin. ' +
    'What is not known is listed, not guessed.',
  arguments: {
    plant: argument('PLANT', 'A plant file'),
    point: optionalArgument('POINT', 'One point only: its name, or MACHINE/POINT'),
  },
  flags: {},
  examples: [
    'soundpost demand examples/raw-water-pump/plant.yaml',
    'soundpost demand examples/raw-water-pump/plant.yaml pump-drive-end-loop',
  ],
  whenAllowed: always,
  async perform(surroundings, { plant: path, point: name }, manner) {
    const { plant } = await readPlant(surroundings, path);
    const only = name === undefined ? undefined : pointCalled(plant, name);
    surroundings.step('deriving frequencies');
    const machines = plant.machines
      .filter((machine) => only === undefined || machine === only.machine)
      .map((machine) => machineDemand(machine, only?.point));
    surroundings.step('weighing what is not known');
    const asked = questions(designOf(plant, seed)).filter((each) =>
      machines.some(({ points }) => points.some(({ point }) => each.points.includes(point.of))),
    );
    const title = valueIfStated(plant.title.values.name) ?? 'a plant without a name';
    const findings = machines.flatMap((each) => each.findings);
    return {
      exit: blocks(findings) ? 1 : 0,
      lines: [
        ...heading(`What must be captured: ${title}`, manner.width),
        ...machines.flatMap((each) => machineLines(each, manner)),
        ...questionLines(asked, manner),
      ],
      json: { plant: title, machines: machines.map(machineJson), questions: asked },
    };
  },
});

function machineDemand(machine: PlantMachine, only: PlantPoint | undefined): MachineDemand {
  const table = frequencyTable(machine.train);
  const limits = machineLimits(machine, table);
  const boundaries = limits?.boundaries.known === true ? limits.boundaries.value : undefined;
  return {
    machine,
    table,
    limits,
    findings: [...trainFindings(machine.train), ...(limits?.findings ?? [])],
    points: machine.points
      .filter((each) => only === undefined || each === only)
      .map((stated) => ({
        stated,
        point: demandOf(stated.statement, machine.name, lineLookup(table)),
        proposals: proposals(table, stated.statement, boundaries),
      })),
  };
}

function machineLines(each: MachineDemand, manner: Manner): readonly Line[] {
  const { machine, table, limits, points, findings } = each;
  const { operation } = machine.train;
  return [
    blank,
    ...machineHeading(machine.name, machine.title, manner),
    ...frequencyLines(table, machine.train, manner),
    blank,
    ...paragraph('  Lines that come close', manner.width),
    ...coincidenceLines(coincidences(machine.train), operation, manner),
    ...limitsLines(limits, manner),
    ...positionLines(machinePositions(machine.train), manner),
    ...unknownLines(unknownOfMachine(machine, table), manner),
    ...(findings.length === 0 ? [] : [blank, ...findingsLines(findings, manner)]),
    ...points.flatMap(({ point, proposals: suggested }) => [
      blank,
      ...pointHeading(point, manner),
      ...placeLines(point, manner),
      ...targetLines(point, manner),
      ...unknownLines(unknownOfPoint(point), manner),
      ...proposalLines(suggested, manner),
    ]),
  ];
}

function unknownLines(unknowns: readonly Unknown[], { width }: Manner): readonly Line[] {
  if (unknowns.length === 0) return [];
  return [
    ...paragraph(`  ? ${capital(counted(unknowns.length, 'thing'))} not known here:`, width, '  '),
    ...unknowns.flatMap(({ of, what, ask }) =>
      paragraph(`    - ${what} of ${of}${ask === undefined ? '' : `; ask ${ask}`}`, width, '  '),
    ),
  ];
}

function machineJson({ machine, table, limits, points, findings }: MachineDemand): unknown {
  return {
    machine: machine.name,
    title: machine.title,
    frequencies: frequencyTableJson(table),
    coincidences: coincidences(machine.train).map(coincidenceJson),
    ...(limits === undefined ? {} : { limits: limitsJson(limits) }),
    positions: positionsJson(machinePositions(machine.train)),
    unknown: unknownOfMachine(machine, table),
    findings: findings.map(findingJson),
    points: points.map(({ point, stated, proposals: suggested }) => ({
      ...(pointJson(point, stated.statement) as object),
      unknown: unknownOfPoint(point),
      proposals: suggested.map(proposalJson),
    })),
  };
}
