import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { bareNumber, measured, said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  answerOf,
  ask,
  fromAll,
  type Level,
  type Motion,
  type Sheet,
  type Stated,
  type Tolerance,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import {
  type Contribution,
  type ContributionStatement,
  contribution,
  type Derived,
} from '../uncertainty/contribution.ts';
import type { Prediction } from './prediction.ts';
import { type Allowances, type CrossPhase, type SensitivityEntered, transverseError } from './reading-allowances.ts';

/** Run-out is a length: what share of a reading it is depends on the reading. */
export function readingOf(reading: Level<Motion> | undefined, point: MeasuringPoint): Answer<Level<Motion>> {
  if (reading?.quantity === 'displacement' && reading.value > 0) return answer(reading);
  return unanswered([{ of: point.of, what: 'reading of the shaft at speed, as a displacement' }]);
}

export function sheetOf(prediction: Prediction): Sheet {
  return prediction.chain.parts.transducer.sheet as Sheet;
}

export function halfWidth(
  name: string,
  value: number,
  source: string,
  more: Pick<ContributionStatement, 'detail' | 'derived'> = {},
): Contribution {
  return contribution({ name, ...more, halfWidth: value, distribution: 'rectangular', source });
}

export const share = (value: number) => measured('fraction', value);
const plain = (value: number) => bareNumber(value);

/** The half-width of the error of motion across the axis, by how that motion goes with the one along it. */
export function transverseDerived(transverse: number, cross: number, phase: CrossPhase | undefined): Derived {
  const error = transverseError(transverse, cross, phase);
  return phase === 'a quarter turn apart'
    ? {
        formula: 'a = √(1 + (s · c)²) − 1',
        substituted: said`a = √(1 + (${share(transverse)} · ${plain(cross)})²) − 1 = ${share(error)}`,
      }
    : { formula: 'a = s · c', substituted: said`a = ${share(transverse)} · ${plain(cross)} = ${share(error)}` };
}

/** The larger of what is left after correction and what is not corrected at all. */
export function residualDerived(left: number, uncorrected: number): Derived {
  return {
    formula: 'a = max(residual, |e|)',
    substituted: said`a = max(${share(left)}, ${share(uncorrected)}) = ${share(Math.max(left, uncorrected))}`,
  };
}

/** One term for each isolator in the line; its gain passes every amplitude, so what is not known of it is asked. */
export function isolatorTerms({ chain }: Prediction): Answer<readonly Contribution[]> {
  const terms = chain.inLine.flatMap(({ of, isolation }) => {
    if (isolation === undefined) return [];
    const tolerance = isolation.gainTolerance ?? unanswered([{ of, what: 'gain tolerance' }]);
    return [
      fromAll({ tolerance }, (v) => halfWidth(`gain of ${of}`, Math.max(v.tolerance.high, -v.tolerance.low), of)),
    ];
  });
  return fromAll(Object.fromEntries(terms.map((term, index) => [index, term])), (known) => Object.values(known));
}

export function sensitivityTerm(
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

export function temperatureTerm(
  point: MeasuringPoint,
  prediction: Prediction,
  allowances: Allowances,
): Answer<Contribution> {
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
