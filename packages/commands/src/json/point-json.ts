import {
  type MeasuringPoint,
  type PointStatement,
  showClause,
  showReference,
  type Target,
  type TargetStatement,
} from '@soundpost/core';
import {
  answerJson,
  bandJson,
  levelJson,
  quantityJson,
  sourcedJson,
  statedJson,
  toleranceJson,
} from './values-json.ts';

const frequency = (value: number) => quantityJson('frequency', value);

function targetJson(target: Target, stated: TargetStatement | undefined): unknown {
  return {
    name: target.name,
    cause: target.cause,
    observe: target.observable.kind,
    motion: target.motion,
    of: target.reference,
    weight: target.weight,
    frequencies: answerJson(target.frequencies, (each) => each.map(frequency)),
    band: answerJson(target.band, bandJson),
    smallest: sourcedJson(target.smallest, stated?.smallest, levelJson),
    largest: sourcedJson(target.largest, stated?.largest, levelJson),
    largestAt: answerJson(target.largestAt, frequency),
    tolerance: sourcedJson(target.tolerance, stated?.tolerance, toleranceJson),
    resolution: sourcedJson(target.resolution, stated?.resolution, frequency),
    ...(target.within === undefined ? {} : { within: target.within }),
    origin: {
      by: target.origin.by,
      from: target.origin.from,
      sources: target.origin.sources.map(showClause),
    },
  };
}

export function pointJson(point: MeasuringPoint, stated: PointStatement): unknown {
  return {
    point: point.of,
    machine: point.machine,
    location: point.location,
    direction: answerJson(point.direction, (direction) => direction),
    installation: point.installation,
    surfaceTemperature: statedJson(point.surfaceTemperature, (value) => quantityJson('temperature', value)),
    targets: point.targets.map((target) =>
      targetJson(
        target,
        stated.targets.find((each) => each.name === target.name),
      ),
    ),
    disturbances: point.disturbances.map((each) => ({
      name: each.name,
      level: answerJson(each.level, levelJson),
      ...(each.band === undefined ? {} : { band: bandJson(each.band) }),
    })),
  };
}

/** A target the machine suggests, its frequency still named after the machine. */
export function proposalJson(proposal: TargetStatement): unknown {
  return {
    name: proposal.name,
    cause: proposal.cause,
    observe: proposal.observe.kind,
    weight: proposal.weight,
    ...(proposal.frequency === undefined ? {} : { frequency: statedJson(proposal.frequency, showReference) }),
    ...(proposal.band === undefined ? {} : { band: statedJson(proposal.band, bandJson) }),
    smallest: statedJson(proposal.smallest, levelJson),
    largest: statedJson(proposal.largest, levelJson),
    tolerance: statedJson(proposal.tolerance, toleranceJson),
    origin: { by: proposal.origin.by, from: proposal.origin.from, sources: proposal.origin.sources.map(showClause) },
  };
}
