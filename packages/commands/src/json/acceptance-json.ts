import {
  type Acceptance,
  type Identified,
  type PointHandedBack,
  quantities,
  showMeasure,
  unprovenTogether,
  waysToRecord,
} from '@soundpost/core';
import { comparisonJson } from './comparison-json.ts';
import { findingJson } from './finding-json.ts';
import { judgementJson } from './judgement-json.ts';
import { answerJson, decibelsJson, quantityJson } from './values-json.ts';

/** Everything of an acceptance: the same for scripts and for the data inside an acceptance file. */
export function acceptanceJson({
  design,
  session,
  recordings,
  compared,
  identified,
  handedBack,
  findings,
  questions,
}: Acceptance): object {
  const { name, revision } = design.plant.title.values;
  return {
    plant: name.known ? name.value : undefined,
    revision: revision?.known === true ? revision.value : undefined,
    session: Object.fromEntries(
      Object.entries(session.head.values).flatMap(([key, entry]) =>
        entry?.known === true ? [[key, entry.value]] : [],
      ),
    ),
    recordings: recordings.map(({ channels, ...recording }) => ({
      ...recording,
      channels: channels.map(({ rate, ...channel }) => ({
        ...channel,
        rate: answerJson(rate, (value) => quantityJson('frequency', value)),
      })),
    })),
    ...(comparisonJson(compared) as object),
    unproven: unprovenTogether(compared.unproven),
    howRecorded: waysToRecord(compared.unproven),
    identified: identified.map(identifiedJson),
    handedBack: { verdict: handedBack.verdict, points: handedBack.points.map(handedBackJson) },
    findings: findings.map(findingJson),
    questions,
  };
}

function identifiedJson({ kind, title, of, at, record, part, standing, ...found }: Identified): unknown {
  const { quantity, value, interval, predicted, allowed, tolerance } = found;
  const between = ({ low, high }: Identified['interval']) => ({ low, high, unit: quantities[quantity].unit });
  return {
    property: kind,
    title,
    ...(of === undefined ? {} : { of }),
    at,
    record,
    part,
    standing,
    found: quantityJson(quantity, value),
    interval: between(interval),
    predicted: quantityJson(quantity, predicted),
    allowed: between(allowed),
    tolerance: showMeasure(tolerance),
  };
}

function handedBackJson({ at, facts, outcome, margin, changes }: PointHandedBack): unknown {
  return {
    at,
    measured: Object.keys(facts),
    outcome,
    margin: { before: decibelsJson(margin.before), after: decibelsJson(margin.after) },
    changes: changes.map(({ rule, target, before, after, turned }) => ({
      rule,
      ...(target === undefined ? {} : { target }),
      turned,
      ...(before === undefined ? {} : { before: judgementJson(before) }),
      ...(after === undefined ? {} : { after: judgementJson(after) }),
    })),
  };
}
