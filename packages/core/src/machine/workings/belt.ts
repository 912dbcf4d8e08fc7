import { optional, quantityField, Refusal, showQuantity, si } from '../../quantity/index.ts';
import { beltPractice } from '../../source/belt-practice.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { beltPassFrequency } from '../belt-frequencies.ts';

export const beltPass = working({
  name: 'belt',
  title: 'Belt-pass frequency',
  inputs: {
    pulleyDiameter: quantityField('length', 'Pitch diameter of one pulley', { symbol: 'D', example: '220 mm' }),
    pulleySpeed: quantityField('shaft speed', 'Speed of that pulley', { symbol: 'n', example: '960 r/min' }),
    beltLength: quantityField('length', 'Pitch length of the belt', { symbol: 'L', example: '3.1 m' }),
    slip: optional(quantityField('fraction', 'Slip of the belt on that pulley', { symbol: 's', example: '0.5 %' })),
  },
  outputs: {
    beltPass: output(
      quantityField('frequency', 'One turn of the belt; its second multiple is commonly the stronger line', {
        symbol: 'f_b',
      }),
      'f_b = π · D · n · (1 − s) / L',
    ),
  },
  holds: 'a friction belt; s = 0 where slip is left out, and the true line then lies up to 2 % lower',
  sources: [clause(beltPractice)],
  evaluate: ({ pulleyDiameter: D, pulleySpeed: n, beltLength: L, slip: s }) => {
    for (const [name, length] of [
      ['pulley-diameter', D],
      ['belt-length', L],
    ] as const) {
      if (!(length > 0)) {
        throw new Refusal({ read: `${name}=${showQuantity('length', length)}`, expected: 'a length above zero' });
      }
    }
    if (L <= Math.PI * D) {
      throw new Refusal({
        read: `belt-length=${showQuantity('length', L)}`,
        expected: `a belt longer than the rim of the pulley, ${showQuantity('length', Math.PI * D)}`,
        suggestion: 'Is it the centre distance, or another unit?',
      });
    }
    return { beltPass: si('frequency', Math.abs(beltPassFrequency(D, n, L, s ?? 0))) };
  },
  example: { 'pulley-diameter': '220 mm', 'pulley-speed': '960 r/min', 'belt-length': '3.1 m', slip: '0.5 %' },
});
