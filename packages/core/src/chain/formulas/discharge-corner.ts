import { type Frequency, numberField, quantityField, Refusal, si, type Tolerance } from '../../quantity/index.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';
import { allowedErrorField } from './allowed-error.ts';

/**
 * Frequency at which a single discharge time constant lets the response fall to 1 + tolerance.low, in hertz:
 * f = G/(2π·τ·√(1 − G²)) with G = 1 + tolerance.low. At half power that is 1/(2πτ).
 */
export function dischargeCorner(timeConstant: number, tolerance: Tolerance): Frequency {
  aboveZero({ timeConstant });
  const [tau, G] = [timeConstant, 1 + tolerance.low];
  if (!(G > 0 && G < 1)) {
    throw new Refusal({ read: `${tolerance.low}`, expected: 'a lower tolerance between zero and −100 %' });
  }
  return si('frequency', G / (2 * Math.PI * tau * Math.sqrt((1 - G) * (1 + G))));
}

export const dischargeCornerWorking = working({
  name: 'discharge-corner',
  title: 'Lower frequency of a sensor from its discharge time constant',
  inputs: {
    timeConstant: quantityField('time', 'Discharge time constant, R · C', { symbol: 'τ', example: '0.5 s' }),
    tolerance: allowedErrorField('Allowed fall of the response below its value well above the corner'),
  },
  outputs: {
    response: output(numberField('Response at that frequency', { symbol: 'G' }), 'G = 1 − the lower side of e'),
    frequency: output(
      quantityField('frequency', 'Frequency at which the response has fallen by the tolerance', { symbol: 'f' }),
      'f = G/(2π · τ · √(1 − G^2))',
    ),
  },
  holds:
    'one time constant alone; two in cascade multiply their responses. 3 dB is the factor √2, which gives 1/(2πτ).',
  sources: [clause(iepePractice, 'discharge time constant', 'computed here')],
  evaluate: ({ timeConstant, tolerance }) => ({
    response: si('ratio', 1 + tolerance.low),
    frequency: dischargeCorner(timeConstant, tolerance),
  }),
  example: { 'time-constant': '0.5 s', tolerance: '5 %' },
});
