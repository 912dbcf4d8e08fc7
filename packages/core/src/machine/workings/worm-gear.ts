import { numberField, quantityField, si, toNumber } from '../../quantity/index.ts';
import { gearFrequencies } from '../../source/gear-frequencies.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { meshOrders } from '../mesh-frequencies.ts';
import { wormPairSheet } from '../worm-pair.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });

export const wormGear = working({
  name: 'worm-gear',
  title: 'Mesh and speeds of a worm and its wheel',
  inputs: {
    starts: wormPairSheet.starts,
    wheelTeeth: wormPairSheet.wheelTeeth,
    wormSpeed: quantityField('shaft speed', 'Speed of the worm', { symbol: 'f_1', example: '1450 r/min' }),
  },
  outputs: {
    ratio: output(numberField('Speed of the worm over speed of the wheel', { symbol: 'i' }), 'i = z_2 / z_1'),
    wheelSpeed: output(quantityField('shaft speed', 'Speed of the wheel', { symbol: 'f_2' }), 'f_2 = f_1 / i'),
    mesh: output(frequency('Tooth mesh', 'f_m'), 'f_m = z_1 · f_1'),
    huntingTooth: output(
      frequency('The same thread meets the same tooth again', 'f_h'),
      'f_h = f_m · gcd(z_1, z_2) / (z_1 · z_2)',
    ),
  },
  holds: 'axes that stand still; the sense of rotation is left out',
  sources: [clause(gearFrequencies, 'a worm counts as a wheel of as many teeth as it has starts')],
  evaluate: ({ starts: z1, wheelTeeth: z2, wormSpeed }) => {
    const f1 = Math.abs(wormSpeed);
    const orders = meshOrders(z1, z2);
    return {
      ratio: z2 / z1,
      wheelSpeed: si('shaft speed', (z1 * f1) / z2),
      mesh: si('frequency', toNumber(orders.mesh) * f1),
      huntingTooth: si('frequency', toNumber(orders.huntingTooth) * f1),
    };
  },
  example: { starts: '2', 'wheel-teeth': '41', 'worm-speed': '1450 r/min' },
});
