import { countField, quantityField, Refusal, showNumber, si, toNumber } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { output, working } from '../../working/index.ts';
import { loopOrders, shortestLoop } from '../toothed-loop.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });

export const toothedLoop = working({
  name: 'chain-or-timing-belt',
  title: 'Mesh and loop pass of a chain or timing belt',
  inputs: {
    drivingTeeth: countField('Teeth of the driving wheel', { symbol: 'z_1', least: 2, example: '19' }),
    drivenTeeth: countField('Teeth of the driven wheel', { symbol: 'z_2', least: 2, example: '57' }),
    loopTeeth: countField('Links of the chain or teeth of the belt', { symbol: 'z_L', least: 2, example: '120' }),
    drivingSpeed: quantityField('shaft speed', 'Speed of the driving wheel', { symbol: 'f_1', example: '300 r/min' }),
  },
  outputs: {
    mesh: output(frequency('Links or teeth running on', 'f_m'), 'f_m = z_1 · f_1'),
    drivenSpeed: output(
      quantityField('shaft speed', 'Speed of the driven wheel', { symbol: 'f_2' }),
      'f_2 = f_m / z_2',
    ),
    loopPass: output(frequency('One turn of the chain or belt', 'f_L'), 'f_L = f_m / z_L'),
    huntingTooth: output(
      frequency('The same tooth meets the same link again', 'f_h'),
      'f_h = f_m · gcd(z_1, z_L) / (z_1 · z_L)',
    ),
  },
  holds: 'no slip and no jumping; both wheels turn the same way',
  sources: [clause(tradePractice, 'tooth mesh of chains and timing belts: teeth times speed', 'from memory')],
  evaluate: ({ drivingTeeth: z1, drivenTeeth: z2, loopTeeth: zL, drivingSpeed }) => {
    const shortest = shortestLoop(z1, z2);
    if (zL < shortest) {
      throw new Refusal({
        read: `loop-teeth=${zL}`,
        expected: `more than ${showNumber(shortest, 3)}, which just reach round wheels of ${z1} and ${z2} teeth that touch`,
      });
    }
    const f1 = Math.abs(drivingSpeed);
    const orders = loopOrders({ driving: z1, loop: zL });
    return {
      mesh: si('frequency', z1 * f1),
      drivenSpeed: si('shaft speed', (z1 * f1) / z2),
      loopPass: si('frequency', toNumber(orders.loopPass) * f1),
      huntingTooth: si('frequency', toNumber(orders.hunting) * f1),
    };
  },
  example: { 'driving-teeth': '19', 'driven-teeth': '57', 'loop-teeth': '120', 'driving-speed': '300 r/min' },
});
