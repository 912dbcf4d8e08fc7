import { type Field, type Tolerance, toleranceField } from '../../quantity/index.ts';

/** Half power: what the trade calls 3 dB is the factor √2; 10^(3/20) is 0.24 % smaller. */
const halfPower: Tolerance = { low: Math.SQRT1_2 - 1, high: Math.SQRT2 - 1 };

/**
 * How far a response may depart from 1: `10 %`, `±10 %`, `+10/-20 %`, `3 dB`. One number means both sides. `3 dB` is
 * the half-power point, as the tables of the trade compute it (0.5412 of the resonance, 1/(2πτ)).
 */
export function allowedErrorField(meaning: string): Field<Tolerance> {
  const signed = toleranceField(meaning, { symbol: 'e', example: '10 %' });
  return {
    ...signed,
    expected: "a tolerance such as '10 %', '±10 %', '+10/-20 %' or '3 dB'",
    read: (raw, writing) => {
      if (typeof raw !== 'string') return signed.read(raw, writing);
      const text = raw.trim();
      if (/^(?:±|\+\/?[-−])?\s*3(?:[.,]0*)?\s*dB$/.test(text)) return halfPower;
      return signed.read(/^[\d.,]/.test(text) ? `±${text}` : text, writing);
    },
  };
}
