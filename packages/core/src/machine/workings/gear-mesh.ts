import { countField, quantityField, si, toNumber } from '../../quantity/index.ts';
import { gearFrequencies } from '../../source/gear-frequencies.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { meshOrders, toothPair } from '../mesh-frequencies.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });

export const gearMesh = working({
  name: 'gear-mesh',
  title: 'Mesh, hunting-tooth and assembly-phase frequencies of a gear pair',
  inputs: {
    pinionTeeth: countField('Teeth of the pinion', { symbol: 'z_1', least: 2, example: '24' }),
    wheelTeeth: countField('Teeth of the wheel', { symbol: 'z_2', least: 2, example: '84' }),
    pinionSpeed: quantityField('shaft speed', 'Speed of the pinion', { symbol: 'f_1', example: '2000 r/min' }),
  },
  outputs: {
    mesh: output(frequency('Tooth mesh', 'f_m'), 'f_m = z_1 · f_1'),
    wheelSpeed: output(quantityField('shaft speed', 'Speed of the wheel', { symbol: 'f_2' }), 'f_2 = z_1 · f_1 / z_2'),
    phases: output(
      countField('Assembly phases: groups of teeth that ever meet', { symbol: 'N_A' }),
      'N_A = gcd(z_1, z_2)',
    ),
    huntingTooth: output(
      frequency('Hunting tooth: how often the same two teeth meet', 'f_h'),
      'f_h = f_m · N_A / (z_1 · z_2)',
    ),
    assemblyPhase: output(frequency('Assembly phase: wear in groups of teeth', 'f_a'), 'f_a = f_m / N_A'),
  },
  holds: 'two wheels on axes that stand still; the sense of rotation is left out; not for planetary sets',
  sources: [clause(gearFrequencies)],
  evaluate: ({ pinionTeeth: z1, wheelTeeth: z2, pinionSpeed }) => {
    const f1 = Math.abs(pinionSpeed);
    const orders = meshOrders(z1, z2);
    return {
      mesh: si('frequency', toNumber(orders.mesh) * f1),
      wheelSpeed: si('shaft speed', (z1 * f1) / z2),
      phases: toothPair(z1, z2).phases,
      huntingTooth: si('frequency', toNumber(orders.huntingTooth) * f1),
      assemblyPhase: si('frequency', toNumber(orders.assemblyPhase) * f1),
    };
  },
  example: { 'pinion-teeth': '24', 'wheel-teeth': '84', 'pinion-speed': '2000 r/min' },
});
