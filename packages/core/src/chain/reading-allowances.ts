import { choiceField, levelField, notBelowZeroField, optional, quantityField, type Sheet } from '../quantity/index.ts';

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
