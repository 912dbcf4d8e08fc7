import {
  cells,
  type DesignedPoint,
  decibels,
  type PlantMachine,
  type PlantPoint,
  type Showing,
  showMeasure,
  showQuantity,
  valueIfStated,
} from '@soundpost/core';
import { saidOf } from './origin.ts';
import type { PointRow } from './views.ts';

/** A point as its file states it, before it is worked out. */
export function statedRow(machine: PlantMachine, point: PlantPoint, showing: Showing): PointRow {
  const { statement, way, chosen } = point;
  return {
    of: `${machine.name}/${statement.name}`,
    machine: machine.name,
    name: statement.name,
    location: valueIfStated(statement.location) ?? 'unknown',
    direction: valueIfStated(statement.direction) ?? 'unknown',
    installation: statement.installation,
    transducer: chosen?.transducer.name ?? '',
    mount: chosen?.mount.name ?? '',
    cable: way?.cable.name ?? '',
    cableLength:
      way === undefined
        ? ''
        : way.cableLength.known
          ? showQuantity('length', way.cableLength.value, showing)
          : 'unknown',
    input: way?.input.name ?? '',
    said: saidAt(point),
    targets: statement.targets.length,
    covered: undefined,
    outcome: undefined,
    findings: undefined,
    rules: [],
    margin: undefined,
  };
}

function saidAt({ statement: { location, direction }, statedLength }: PlantPoint): PointRow['said'] {
  const all = { location: saidOf(location), direction: saidOf(direction), cableLength: saidOf(statedLength) };
  return Object.fromEntries(Object.entries(all).filter(([, said]) => said !== undefined));
}

/** The same row with what the design found. */
export function designedRow(machine: PlantMachine, designed: DesignedPoint, showing: Showing): PointRow {
  const { appraisal, findings } = designed;
  const covered =
    appraisal === undefined
      ? 0
      : cells(appraisal).filter((cell) => cell.outcome === 'meets' || cell.outcome === 'warns').length;
  const margins = appraisal?.judgements.flatMap((each) => each.margin ?? []) ?? [];
  const told = findings.filter((each) => each.weight !== 'notes');
  return {
    ...statedRow(machine, designed.stated, showing),
    covered,
    outcome: appraisal?.outcome ?? 'no chain',
    findings: told.length,
    rules: [...new Set(told.map((each) => each.rule))],
    margin: margins.length === 0 ? undefined : showMeasure(decibels(Math.min(...margins)), showing),
  };
}
