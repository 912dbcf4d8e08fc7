import { quantityField, Refusal, si } from '../../quantity/index.ts';
import { iec60079x11 } from '../../source/iec-60079-11.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';

/** What a barrier limited by one resistor gives at most: I = U/R, P = U²/(4R) = U·I/4, into a load as large as R. */
export function resistiveBarrier(voltage: number, resistance: number): { current: number; power: number } {
  if (!(resistance > 0)) throw new Refusal({ read: `${resistance} ohm`, expected: 'a resistance above zero' });
  const [U, R] = [voltage, resistance];
  return { current: U / R, power: (U * U) / (4 * R) };
}

export const resistiveBarrierWorking = working({
  name: 'resistive-barrier',
  title: 'Highest current and power of a barrier that one resistor limits',
  inputs: {
    uo: quantityField('voltage', 'Highest output voltage', { symbol: 'U_o', example: '28 V' }),
    resistance: quantityField('resistance', 'The resistor that limits, at its lowest', {
      symbol: 'R',
      example: '300 ohm',
    }),
  },
  outputs: {
    io: output(quantityField('current', 'Highest output current', { symbol: 'I_o' }), 'I_o = U_o/R'),
    po: output(quantityField('power', 'Highest output power', { symbol: 'P_o' }), 'P_o = U_o · I_o/4'),
  },
  holds: 'a linear characteristic. The values of the certificate are those that count; these say whether they agree.',
  sources: [clause(iec60079x11, 'linear limitation')],
  evaluate: ({ uo, resistance }) => {
    const { current, power } = resistiveBarrier(uo, resistance);
    return { io: si('current', current), po: si('power', power) };
  },
  example: { uo: '28 V', resistance: '300 ohm' },
});
