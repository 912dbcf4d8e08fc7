import { numberField, quantityField, Refusal, si } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { type Complex, complex, magnitude, oneComplex, quotient, sum } from '../../signal/complex.ts';
import { chargeAmplifier } from '../../source/charge-amplifier.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { sienaChargeNotes } from '../../source/siena-charge-notes.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** A resistance and a capacitance side by side; without a stated resistance nothing leaks. SI units. */
export interface LeakyCapacitance {
  readonly capacitance: number;
  readonly resistance: number | undefined;
}

/** Y = 1/R + jωC of the two side by side, in siemens, at a frequency in hertz. */
export function admittance({ capacitance, resistance }: LeakyCapacitance, frequency: number): Complex {
  return complex(resistance === undefined ? 0 : 1 / resistance, 2 * Math.PI * frequency * capacitance);
}

/** Lower corner of a charge converter, −3 dB, in hertz: f = 1/(2π·R_f·C_f). */
export function converterCorner(feedbackResistance: number, feedbackCapacitance: number): number {
  aboveZero({ feedbackResistance, feedbackCapacitance });
  return 1 / (2 * Math.PI * feedbackResistance * feedbackCapacitance);
}

/**
 * What the amplifier makes of its own voltage noise, |1 + Z_f/Z_s| = |1 + Y_s/Y_f|: 1 + C_s/C_f well above the corner,
 * 1 + R_f/R_s towards rest. `source` is element, cable and insulation together. Holds for an ideal amplifier.
 */
export function converterNoiseGain(feedback: LeakyCapacitance, source: LeakyCapacitance, frequency: number): number {
  return magnitude(sum(oneComplex, quotient(admittance(source, frequency), admittance(feedback, frequency))));
}

/** What the amplifier makes of its own offset and slow drift: 1 + R_f/R_s. */
export function converterGainAtRest(feedbackResistance: number, sourceResistance: number): number {
  aboveZero({ feedbackResistance, sourceResistance });
  return 1 + feedbackResistance / sourceResistance;
}

/** J/K, exact in the SI. */
const boltzmann = 1.380649e-23;

/**
 * Noise density at the output of a charge converter, V/√Hz: the amplifier's own times |1 + Z_f/Z_s|, and beside it, as
 * squares, the thermal noise of the feedback resistor and of the insulation, √(4·k·T/R)·|Z_f| each. Temperature in K.
 */
export function converterNoise(
  amplifier: number,
  feedback: LeakyCapacitance,
  source: LeakyCapacitance,
  frequency: number,
  temperature: number,
): number {
  const impedance = 1 / magnitude(admittance(feedback, frequency));
  const thermal = (resistance: number | undefined) =>
    resistance === undefined ? 0 : Math.sqrt((4 * boltzmann * temperature) / resistance) * impedance;
  return Math.hypot(
    amplifier * converterNoiseGain(feedback, source, frequency),
    thermal(feedback.resistance),
    thermal(source.resistance),
  );
}

export const chargeConverter = working({
  name: 'charge-converter',
  title: 'Charge accelerometer with its converter: sensitivity, lower corner, noise gain',
  inputs: {
    sensitivity: quantityField('charge per acceleration', 'Charge sensitivity of the element', {
      symbol: 'S_q',
      example: '25 pC/g',
    }),
    feedbackCapacitance: quantityField('capacitance', 'Feedback capacitance of the converter', {
      symbol: 'C_f',
      example: '250 pF',
    }),
    feedbackResistance: quantityField('resistance', 'Feedback resistance of the converter', {
      symbol: 'R_f',
      example: '1 Gohm',
    }),
    sourceCapacitance: optional(
      quantityField('capacitance', 'Element and low-noise cable together', { symbol: 'C_s', example: '1000 pF' }),
    ),
    sourceResistance: optional(
      quantityField('resistance', 'Insulation of element and cable, as hot as they get', {
        symbol: 'R_s',
        example: '10 Mohm',
      }),
    ),
    frequency: optional(
      quantityField('frequency', 'Where the noise gain is wanted; well above the corner where left out', {
        symbol: 'f',
        example: '1 Hz',
      }),
    ),
  },
  outputs: {
    voltageSensitivity: output(
      quantityField('voltage per acceleration', 'Sensitivity of the output', { symbol: 'S' }),
      'S = S_q/C_f',
    ),
    corner: output(quantityField('frequency', 'Lower corner, −3 dB', { symbol: 'f_l' }), 'f_l = 1/(2π · R_f · C_f)'),
    noiseGain: optionalOutput(
      numberField("Times the amplifier's own voltage noise; needs the source capacitance", { symbol: 'G' }),
      'G = |1 + Z_f/Z_s|, well above the corner 1 + C_s/C_f',
    ),
    gainAtRest: optionalOutput(
      numberField("Times the amplifier's own offset and drift; needs the source resistance", { symbol: 'G_0' }),
      'G_0 = 1 + R_f/R_s',
    ),
  },
  holds:
    'ideal amplifier: with finite gain A the sensitivity is lower by about (C_s + C_f)/(A · C_f). Neither cable nor ' +
    'insulation changes the sensitivity; both raise the noise, and poor insulation the drift. The sign of the output is left out.',
  sources: [clause(chargeAmplifier), clause(screeningRules, 'F24'), clause(sienaChargeNotes)],
  evaluate: ({
    sensitivity,
    feedbackCapacitance,
    feedbackResistance,
    sourceCapacitance,
    sourceResistance,
    frequency,
  }) => {
    aboveZero({ sensitivity, feedbackCapacitance, feedbackResistance, sourceCapacitance, sourceResistance, frequency });
    if (frequency !== undefined && sourceCapacitance === undefined) {
      throw new Refusal({ read: `frequency=${frequency} Hz`, expected: "'source-capacitance' beside the frequency" });
    }
    const feedback = { capacitance: feedbackCapacitance, resistance: feedbackResistance };
    return {
      voltageSensitivity: si('voltage per acceleration', sensitivity / feedbackCapacitance),
      corner: si('frequency', converterCorner(feedbackResistance, feedbackCapacitance)),
      noiseGain:
        sourceCapacitance === undefined
          ? undefined
          : frequency === undefined
            ? 1 + sourceCapacitance / feedbackCapacitance
            : converterNoiseGain(feedback, { capacitance: sourceCapacitance, resistance: sourceResistance }, frequency),
      gainAtRest:
        sourceResistance === undefined ? undefined : converterGainAtRest(feedbackResistance, sourceResistance),
    };
  },
  example: {
    sensitivity: '25 pC/g',
    'feedback-capacitance': '250 pF',
    'feedback-resistance': '1 Gohm',
    'source-capacitance': '1000 pF',
    'source-resistance': '10 Mohm',
  },
});
