import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Target } from '../demand/target.ts';
import { bareNumber, measured, measuredLevel, said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  answerOf,
  ask,
  asSineDetector,
  choiceField,
  fromAll,
  type Level,
  levelField,
  type Motion,
  notBelowZeroField,
  optional,
  quantityField,
  type Sheet,
  type Stated,
  type Tolerance,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { type Budget, combined } from '../uncertainty/budget.ts';
import {
  type Contribution,
  type ContributionStatement,
  contribution,
  type Derived,
} from '../uncertainty/contribution.ts';
import type { Prediction } from './prediction.ts';
import { responseExtremes } from './response.ts';

/** How the motion across the axis goes with that along it; in step, the worse, where nothing is said. */
export const crossPhases = ['in step', 'a quarter turn apart'] as const;
export type CrossPhase = (typeof crossPhases)[number];

/**
 * Error of an amplitude through transverse sensitivity s with motion c times as large across: s·c where both keep step,
 * √(1 + (s·c)²) − 1 where they lie a quarter turn apart, as in a circular path.
 */
export function transverseError(transverse: number, cross: number, phase: CrossPhase = 'in step'): number {
  const part = transverse * cross;
  return phase === 'in step' ? part : Math.sqrt(1 + part * part) - 1;
}

/** What no data sheet of a part tells: stated once for a plant or a point, with its source. */
export const allowanceSheet = {
  calibration: notBelowZeroField(
    quantityField('fraction', 'Expanded uncertainty (k = 2) of an individual calibration', {
      example: '1.5 %',
    }),
  ),
  referenceTemperature: quantityField('temperature', 'Temperature at which the sensitivity was calibrated', {
    example: '23 °C',
  }),
  mounting: notBelowZeroField(
    quantityField('fraction', 'Repeatability of mounting and surface, half-width', { example: '2 %' }),
  ),
  inputGain: notBelowZeroField(quantityField('fraction', 'Gain error of the input, half-width', { example: '1 %' })),
  crossMotion: notBelowZeroField(
    quantityField('ratio', 'Motion across the axis over motion along it', { example: '1' }),
  ),
  crossPhase: optional(
    choiceField(crossPhases, 'Whether the motion across keeps step, or lies a quarter turn apart as in a circle'),
  ),
  temperatureResidual: optional(
    notBelowZeroField(
      quantityField('fraction', 'What remains of the temperature error after correction, half-width', {
        example: '0.5 %',
      }),
    ),
  ),
  responseResidual: notBelowZeroField(
    quantityField('fraction', 'What remains of the response error after correction, half-width', {
      example: '0.5 %',
    }),
  ),
  runoutLeft: optional(
    notBelowZeroField(
      levelField(['displacement'], 'What is left of the run-out under a probe once its slow roll is taken away', {
        example: '1 um pp',
      }),
    ),
  ),
  probeTemperature: optional(
    notBelowZeroField(
      quantityField('fraction', 'Change of a probe, its cable and its driver with their temperature, half-width', {
        example: '1 %',
      }),
    ),
  ),
} as const;

export type Allowances = Sheet<typeof allowanceSheet>;

/** Which sensitivity is entered in the instrument. */
export type SensitivityEntered = 'individual' | 'nominal';

const coverage = { factor: 2 } as const;

/**
 * Relative uncertainty of the amplitude a target is read with, k = 2: sensitivity (calibration certificate, or the
 * spread of pieces), temperature of the surface, mounting, input, motion across the axis, response. Independent terms
 * of a product, so their relative uncertainties add as squares; half-widths are rectangular. Holds well above the
 * noise, which would only add upward. A probe on a shaft has no mounting and no motion across it; what is left of the
 * run-out, and the temperature of the whole set, stand in their place, the run-out as a share of the stated `reading`.
 * Source: JCGM 100, 5.1.6.
 */
export function readingUncertainty(
  target: Target,
  point: MeasuringPoint,
  prediction: Prediction,
  allowances: Allowances,
  entered: SensitivityEntered,
  reading?: Level<Motion>,
): Answer<Budget> {
  if (prediction.chain.transducer.reference === 'shaft-relative') {
    return shaftUncertainty(target, point, prediction, allowances, entered, reading);
  }
  const stated = ask(allowances, ['mounting', 'inputGain', 'crossMotion', 'responseResidual'], (values) => values);
  return fromAll(
    {
      stated,
      sensitivity: sensitivityTerm(prediction, allowances, entered),
      temperature: temperatureTerm(point, prediction, allowances),
      transverse: answerOf(
        sheetOf(prediction).values.transverse as Stated<number> | undefined,
        sheetOf(prediction).of,
        'transverse sensitivity',
      ),
      response: target.observable.scansBand ? answer(undefined) : responseExtremes(target, prediction),
      isolators: isolatorTerms(prediction),
    },
    ({ stated: allowed, sensitivity, temperature, transverse, response, isolators }) => {
      const uncorrected =
        response === undefined ? 0 : Math.max(Math.abs(response.highest.error), Math.abs(response.lowest.error));
      const residual = Math.max(allowed.responseResidual, uncorrected);
      return combined(
        [
          sensitivity,
          temperature,
          halfWidth('mounting and surface', allowed.mounting, allowances.of),
          halfWidth('gain of the input', allowed.inputGain, allowances.of),
          ...isolators,
          halfWidth(
            'transverse sensitivity',
            transverseError(transverse, allowed.crossMotion, valueIfStated(allowances.values.crossPhase)),
            sheetOf(prediction).of,
            {
              derived: transverseDerived(transverse, allowed.crossMotion, valueIfStated(allowances.values.crossPhase)),
            },
          ),
          halfWidth(
            'response left uncorrected',
            residual,
            residual === uncorrected ? prediction.chain.of : allowances.of,
            { derived: residualDerived(allowed.responseResidual, uncorrected) },
          ),
        ],
        { coverage },
      );
    },
  );
}

/** Slope of the set, run-out left, temperature of the set, input, response: what a shaft is read with. */
function shaftUncertainty(
  target: Target,
  point: MeasuringPoint,
  prediction: Prediction,
  allowances: Allowances,
  entered: SensitivityEntered,
  reading: Level<Motion> | undefined,
): Answer<Budget> {
  return fromAll(
    {
      stated: ask(allowances, ['runoutLeft', 'probeTemperature', 'inputGain', 'responseResidual'], (values) => values),
      at: readingOf(reading, point),
      sensitivity: sensitivityTerm(prediction, allowances, entered),
      response: responseExtremes(target, prediction),
      isolators: isolatorTerms(prediction),
    },
    ({ stated, at, sensitivity, response, isolators }) => {
      const left = asSineDetector(stated.runoutLeft, at.detector);
      const uncorrected = Math.max(Math.abs(response.highest.error), Math.abs(response.lowest.error));
      const residual = Math.max(stated.responseResidual, uncorrected);
      return combined(
        [
          sensitivity,
          halfWidth('run-out left', left.value / at.value, allowances.of, {
            detail: said`${measuredLevel(stated.runoutLeft)} of ${measuredLevel(at)}`,
            derived: {
              formula: 'a = run-out left / reading',
              substituted: said`a = ${measuredLevel(left)} / ${measuredLevel(at)} = ${share(left.value / at.value)}`,
            },
          }),
          halfWidth('temperature of probe, cable and driver', stated.probeTemperature, allowances.of),
          halfWidth('gain of the input', stated.inputGain, allowances.of),
          ...isolators,
          halfWidth(
            'response left uncorrected',
            residual,
            residual === uncorrected ? prediction.chain.of : allowances.of,
            { derived: residualDerived(stated.responseResidual, uncorrected) },
          ),
        ],
        { coverage },
      );
    },
  );
}

/** Run-out is a length: what share of a reading it is depends on the reading. */
function readingOf(reading: Level<Motion> | undefined, point: MeasuringPoint): Answer<Level<Motion>> {
  if (reading?.quantity === 'displacement' && reading.value > 0) return answer(reading);
  return unanswered([{ of: point.of, what: 'reading of the shaft at speed, as a displacement' }]);
}

function sheetOf(prediction: Prediction): Sheet {
  return prediction.chain.parts.transducer.sheet as Sheet;
}

function halfWidth(
  name: string,
  value: number,
  source: string,
  more: Pick<ContributionStatement, 'detail' | 'derived'> = {},
): Contribution {
  return contribution({ name, ...more, halfWidth: value, distribution: 'rectangular', source });
}

const share = (value: number) => measured('fraction', value);
const plain = (value: number) => bareNumber(value);

/** The half-width of the error of motion across the axis, by how that motion goes with the one along it. */
function transverseDerived(transverse: number, cross: number, phase: CrossPhase | undefined): Derived {
  const error = transverseError(transverse, cross, phase);
  return phase === 'a quarter turn apart'
    ? {
        formula: 'a = √(1 + (s · c)²) − 1',
        substituted: said`a = √(1 + (${share(transverse)} · ${plain(cross)})²) − 1 = ${share(error)}`,
      }
    : { formula: 'a = s · c', substituted: said`a = ${share(transverse)} · ${plain(cross)} = ${share(error)}` };
}

/** The larger of what is left after correction and what is not corrected at all. */
function residualDerived(left: number, uncorrected: number): Derived {
  return {
    formula: 'a = max(residual, |e|)',
    substituted: said`a = max(${share(left)}, ${share(uncorrected)}) = ${share(Math.max(left, uncorrected))}`,
  };
}

/** One term for each isolator in the line; its gain passes every amplitude, so what is not known of it is asked. */
function isolatorTerms({ chain }: Prediction): Answer<readonly Contribution[]> {
  const terms = chain.inLine.flatMap(({ of, isolation }) => {
    if (isolation === undefined) return [];
    const tolerance = isolation.gainTolerance ?? unanswered([{ of, what: 'gain tolerance' }]);
    return [
      fromAll({ tolerance }, (v) => halfWidth(`gain of ${of}`, Math.max(v.tolerance.high, -v.tolerance.low), of)),
    ];
  });
  return fromAll(Object.fromEntries(terms.map((term, index) => [index, term])), (known) => Object.values(known));
}

function sensitivityTerm(
  prediction: Prediction,
  allowances: Allowances,
  entered: SensitivityEntered,
): Answer<Contribution> {
  if (entered === 'individual') {
    return ask(allowances, ['calibration'], ({ calibration }) =>
      contribution({ name: 'calibration of this piece', expanded: calibration, k: 2, source: allowances.of }),
    );
  }
  const sheet = sheetOf(prediction);
  return fromAll(
    { piece: answerOf(sheet.values.sensitivityTolerance as Stated<Tolerance>, sheet.of, 'sensitivity tolerance') },
    ({ piece }) => halfWidth('nominal sensitivity', Math.max(piece.high, -piece.low), sheet.of),
  );
}

function temperatureTerm(point: MeasuringPoint, prediction: Prediction, allowances: Allowances): Answer<Contribution> {
  const sheet = sheetOf(prediction);
  const corrected = valueIfStated(allowances.values.temperatureResidual);
  if (corrected !== undefined) return answer(halfWidth('temperature left after correction', corrected, allowances.of));
  return fromAll(
    {
      coefficient: answerOf(
        sheet.values.temperatureCoefficient as Stated<number> | undefined,
        sheet.of,
        'temperature coefficient',
      ),
      surface: answerOf(point.surfaceTemperature, point.of, 'surface temperature'),
      reference: ask(allowances, ['referenceTemperature'], (values) => values.referenceTemperature as number),
    },
    ({ coefficient, surface, reference }) =>
      halfWidth('temperature of the surface', Math.abs(coefficient * (surface - reference)), sheet.of, {
        derived: {
          formula: 'a = |α · (T − T_0)|',
          substituted: said`a = |${measured('per temperature', coefficient)} · (${measured('temperature', surface)} − ${measured('temperature', reference)})| = ${share(Math.abs(coefficient * (surface - reference)))}`,
        },
      }),
  );
}

/** Whether an expanded uncertainty keeps a promise: `kept` where it fits inside the tolerance, else `not proven`. */
export function promise(tolerance: Tolerance, budget: Budget): 'kept' | 'not proven' {
  return budget.upward <= tolerance.high && budget.downward <= -tolerance.low ? 'kept' : 'not proven';
}
