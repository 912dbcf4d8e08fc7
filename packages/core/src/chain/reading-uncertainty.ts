import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Target } from '../demand/target.ts';
import { measuredLevel, said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  answerOf,
  ask,
  asSineDetector,
  fromAll,
  type Level,
  type Motion,
  type Stated,
  type Tolerance,
  valueIfStated,
} from '../quantity/index.ts';
import { type Budget, combined } from '../uncertainty/budget.ts';
import type { Prediction } from './prediction.ts';
import { type Allowances, type SensitivityEntered, transverseError } from './reading-allowances.ts';
import {
  halfWidth,
  isolatorTerms,
  readingOf,
  residualDerived,
  sensitivityTerm,
  share,
  sheetOf,
  temperatureTerm,
  transverseDerived,
} from './reading-terms.ts';
import { responseExtremes } from './response.ts';

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

/** Whether an expanded uncertainty keeps a promise: `kept` where it fits inside the tolerance, else `not proven`. */
export function promise(tolerance: Tolerance, budget: Budget): 'kept' | 'not proven' {
  return budget.upward <= tolerance.high && budget.downward <= -tolerance.low ? 'kept' : 'not proven';
}
