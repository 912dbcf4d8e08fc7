import {
  type Budget,
  contributionTitle,
  type Design,
  type DesignedMachine,
  type DesignedPoint,
  type Fraction,
  type PointSettings,
  type Prediction,
  pointLife,
  type SpectrumSet,
  showFraction,
  showMeasure,
  type TargetBudget,
  wiredPoints,
} from '@soundpost/core';
import { alarmsJson, windowJson } from './alarms-json.ts';
import { findingJson } from './finding-json.ts';
import { coincidenceJson, frequencyTableJson } from './frequency-table-json.ts';
import { appraisalJson } from './judgement-json.ts';
import { lifeJson } from './life-json.ts';
import { limitsJson } from './limits-json.ts';
import { loopJson } from './loop-json.ts';
import { areaJson, probesJson, terminalsJson } from './place-json.ts';
import { pointJson, proposalJson } from './point-json.ts';
import { answerJson, bandJson, decibelsJson, quantityJson, toleranceJson } from './values-json.ts';

const frequency = (value: number) => quantityJson('frequency', value);
const fraction = (value: number) => quantityJson('fraction', value);
const time = (value: number) => quantityJson('time', value);

function setJson(set: SpectrumSet): unknown {
  return {
    name: set.name,
    purpose: set.purpose,
    highestFrequency: frequency(set.highestFrequency),
    lines: set.lines,
    resolution: frequency(set.resolution),
    recordLength: time(set.recordLength),
    samplingRate: frequency(set.samplingRate),
    samples: set.samples,
    window: set.window,
    averages: set.averages,
    ...(set.envelopeBand === undefined ? {} : { envelopeBand: bandJson(set.envelopeBand) }),
    ...(set.rawSamplingRate === undefined ? {} : { rawSamplingRate: frequency(set.rawSamplingRate) }),
    ...(set.rawSamples === undefined ? {} : { rawSamples: set.rawSamples }),
    ...(set.from === undefined ? {} : { from: frequency(set.from) }),
    ...detailsJson(set),
    reasons: set.reasons.map((each) => showMeasure(each)),
  };
}

/** What only some kinds of record have: plain numbers in coherent SI, exact ratios as text. */
function detailsJson({ orders, smear, integration, crank }: SpectrumSet): object {
  const given = Object.entries({ orders, smear, integration, crank }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given.map(([name, value]) => [name, plainJson(value)]));
}

function plainJson(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainJson);
  if (typeof value !== 'object' || value === null) return value;
  if ('numerator' in value && 'denominator' in value) return showFraction(value as Fraction);
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, plainJson(each)]));
}

function settingsJson(settings: PointSettings): unknown {
  return { sets: settings.sets.map(setJson), unknown: settings.unknown };
}

function budgetJson(budget: Budget): unknown {
  return {
    standardUncertainty: fraction(budget.standardUncertainty),
    coverageFactor: budget.coverage.factor,
    expandedUncertainty: fraction(budget.expandedUncertainty),
    upward: fraction(budget.upward),
    downward: fraction(budget.downward),
    contributions: budget.lines.map((line) => ({
      name: showMeasure(contributionTitle(line.contribution)),
      distribution: line.contribution.distribution,
      standardUncertainty: fraction(line.uncertainty),
      share: line.share,
      ...(line.contribution.source === undefined ? {} : { source: line.contribution.source }),
    })),
  };
}

function targetBudgetJson(each: TargetBudget): unknown {
  return {
    target: each.target,
    entered: each.entered,
    budget: answerJson(each.budget, budgetJson),
    tolerance: answerJson(each.tolerance, toleranceJson),
    promise: answerJson(each.promise, (promise) => promise),
    trials: answerJson(each.trials, ({ halfWidth, seed, count }) => ({ halfWidth: fraction(halfWidth), seed, count })),
  };
}

function predictionJson(prediction: Prediction): unknown {
  const { transducer } = prediction.chain;
  const volts = (value: number) => quantityJson('voltage', value);
  return {
    sensitivity: answerJson(prediction.chain.sensitivity, (value) => ({ value, per: transducer.senses })),
    ...(transducer.mountedResonance === undefined
      ? {}
      : { mountedResonance: answerJson(transducer.mountedResonance, frequency) }),
    ...(transducer.settling === undefined ? {} : { settling: answerJson(transducer.settling, time) }),
    ...(prediction.bias === undefined
      ? {}
      : {
          bias: answerJson(prediction.bias, (bias) => ({
            low: volts(bias.low),
            high: volts(bias.high),
            lineDrop: volts(bias.lineDrop),
            topSwing: volts(bias.swing.top),
            bottomSwing: volts(bias.swing.bottom),
          })),
        }),
    ...(prediction.loop === undefined
      ? {}
      : {
          loop: {
            resistance: answerJson(prediction.loop.resistance, (value) => quantityJson('resistance', value)),
            largestResistance: answerJson(prediction.loop.largestResistance, (value) =>
              quantityJson('resistance', value),
            ),
            spare: answerJson(prediction.loop.spare, volts),
            failureCurrent: quantityJson('current', prediction.loop.failureCurrent),
          },
        }),
  };
}

function designedPointJson(designed: DesignedPoint): unknown {
  return {
    ...(pointJson(designed.point, designed.stated.statement) as object),
    ...(designed.appraisal === undefined
      ? {}
      : {
          appraisal: appraisalJson(designed.appraisal),
          prediction: predictionJson(designed.appraisal.prediction),
          terminals: terminalsJson(designed.appraisal.prediction.chain),
          life: lifeJson(pointLife(designed.point, designed.appraisal.prediction.chain)),
        }),
    proposals: designed.proposals.map(proposalJson),
    settings: settingsJson(designed.settings),
    uncertainty: designed.budgets.map(targetBudgetJson),
    ...(designed.area === undefined ? {} : { area: areaJson(designed.area) }),
    ...(designed.probes === undefined ? {} : { probes: probesJson(designed.probes) }),
    ...(designed.alarms === undefined ? {} : { alarms: alarmsJson(designed.alarms, designed.point.of) }),
    ...(designed.window === undefined ? {} : { window: windowJson(designed.window) }),
    ...(designed.limits === undefined ? {} : { limits: limitsJson(designed.limits) }),
    findings: designed.findings.map(findingJson),
  };
}

function machineJson(machine: DesignedMachine): unknown {
  return {
    machine: machine.stated.name,
    title: machine.stated.title,
    frequencies: frequencyTableJson(machine.frequencies),
    coincidences: machine.coincidences.map(coincidenceJson),
    ...(machine.limits === undefined ? {} : { limits: limitsJson(machine.limits) }),
    findings: machine.findings.map(findingJson),
    points: machine.points.map(designedPointJson),
  };
}

export function designJson(design: Design, seed: number): unknown {
  return outline(design, seed, design.machines.map(machineJson));
}

/** The design as text in lines, with more beside it, machine by machine: the whole of a large plant is never held. */
export function* designJsonInPieces(design: Design, seed: number, more: object): Generator<string> {
  const text = JSON.stringify({ ...outline(design, seed, []), ...more }, null, 2);
  // At this depth the key stands once: what is deeper is further in, and a text holds no line end.
  const empty = '\n  "machines": [';
  const at = text.indexOf(`${empty}]`) + empty.length;
  yield text.slice(0, at);
  for (const [place, machine] of design.machines.entries()) {
    const lines = JSON.stringify(machineJson(machine), null, 2).replaceAll('\n', '\n    ');
    yield `${place === 0 ? '' : ','}\n    ${lines}`;
  }
  yield `${design.machines.length === 0 ? '' : '\n  '}${text.slice(at)}\n`;
}

function outline(design: Design, seed: number, machines: readonly unknown[]): object {
  const { name } = design.plant.title.values;
  const points = design.machines.flatMap(wiredPoints);
  return {
    plant: name.known ? name.value : null,
    verdict: design.verdict,
    policy: {
      detection: decibelsJson(design.plant.policy.detection),
      headroom: decibelsJson(design.plant.policy.headroom),
      response: fraction(design.plant.policy.response),
    },
    seed,
    machines,
    loops: design.loops.map((loop) => loopJson(loop, points)),
    findings: design.findings.map(findingJson),
  };
}
