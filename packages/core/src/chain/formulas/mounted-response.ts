import { type Frequency, numberField, quantityField, Refusal, si, type Tolerance } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { singleDegreeOfFreedom } from '../../source/single-degree-of-freedom.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';
import { allowedErrorField } from './allowed-error.ts';

/** Where a resonant response leaves its tolerance, and the response there: above 1 on the upper side, below on the lower. */
export interface UsableLimit {
  readonly frequency: number;
  readonly response: number;
}

/**
 * The frequency at which a resonant response first leaves its tolerance. From |H|² = 1/((1 − x)² + x/Q²) with x = r²
 * and b = 1 − 1/(2Q²): the upper limit G = 1 + e is first met at x = b − √(b² − 1 + 1/G²); where damping keeps the peak
 * below it, the lower limit is met at x = b + √(b² − 1 + 1/G²). Undamped: r = √(1 − 1/(1 + e)).
 * Refuses a tolerance of zero width or of −100 % and more.
 */
export function usableLimit(resonance: number, quality: number | undefined, tolerance: Tolerance): UsableLimit {
  aboveZero({ resonance, quality });
  if (!(tolerance.high > 0 && tolerance.low < 0 && tolerance.low > -1)) {
    throw new Refusal({
      read: `${tolerance.low}..${tolerance.high}`,
      expected: 'a tolerance with an upper side above zero and a lower side between zero and −100 %',
    });
  }
  const b = quality === undefined ? 1 : 1 - 1 / (2 * quality * quality);
  const upper = 1 + tolerance.high;
  const rise = 1 - 1 / upper ** 2;
  // Each root is written as the product of both over the other one, which keeps its digits where they nearly cancel.
  if (b > 0 && b * b > rise) {
    return { frequency: resonance * Math.sqrt(rise / (b + Math.sqrt(b * b - rise))), response: upper };
  }
  const lower = 1 + tolerance.low;
  const fall = 1 / lower ** 2 - 1;
  const root = Math.sqrt(b * b + fall);
  return { frequency: resonance * Math.sqrt(b > 0 ? b + root : fall / (root - b)), response: lower };
}

/** The upper frequency up to which the response keeps its tolerance, in hertz; see `usableLimit`. */
export function usableFrequency(resonance: number, quality: number | undefined, tolerance: Tolerance): Frequency {
  return si('frequency', usableLimit(resonance, quality, tolerance).frequency);
}

export const mountedResponse = working({
  name: 'mounted-response',
  title: 'Usable upper frequency of a sensor on its mounted resonance',
  inputs: {
    resonance: quantityField('frequency', 'Mounted resonance, of the sensor as it is mounted', {
      symbol: 'f_n',
      example: '27 kHz',
    }),
    quality: optional(
      numberField('Quality of the resonance, 1/(2ζ); left out: undamped', { symbol: 'Q', example: '12' }),
    ),
    tolerance: allowedErrorField('Allowed departure of the response from its value well below the resonance'),
  },
  outputs: {
    dampingTerm: output(
      numberField('1 without damping, smaller with it', { symbol: 'b' }),
      'b = 1 − 1/(2·Q^2), or 1 where no quality is given',
    ),
    response: output(
      numberField('Response at which the tolerance ends; below 1 where damping keeps the peak inside', { symbol: 'G' }),
      'G = 1 + e_side, the side of the tolerance that is met first',
    ),
    usableFrequency: output(
      quantityField('frequency', 'Frequency at which the response first leaves its tolerance', { symbol: 'f' }),
      'f = f_n · √(b ∓ √(b^2 − 1 + 1/G^2)), minus on the upper side and plus on the lower',
    ),
  },
  holds:
    'one degree of freedom, below the resonance; the sensor alone, without the low-frequency side and without what structure and surface do. Undamped is the pessimistic case on the upper side. 3 dB is the factor √2.',
  sources: [clause(singleDegreeOfFreedom)],
  evaluate: ({ resonance, quality, tolerance }) => {
    const { frequency, response } = usableLimit(resonance, quality, tolerance);
    return {
      dampingTerm: si('ratio', quality === undefined ? 1 : 1 - 1 / (2 * quality * quality)),
      response: si('ratio', response),
      usableFrequency: si('frequency', frequency),
    };
  },
  example: { resonance: '27 kHz', tolerance: '10 %' },
});
