import { countField, optional, quantityField, si } from '../../quantity/index.ts';
import { hydraulicTurbinePractice } from '../../source/hydraulic-turbine-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { commonOrder, rowMeetings } from '../bladed-rows.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });

export const bladeVane = working({
  name: 'blade-vane',
  title: 'Blade and vane pass, and where running and standing rows meet strongest',
  inputs: {
    blades: countField('Running blades or vanes', { symbol: 'z_b', example: '13' }),
    vanes: optional(countField('Standing vanes or guide vanes beside them', { symbol: 'z_v', example: '20' })),
    speed: quantityField('shaft speed', 'Speed of the wheel', { symbol: 'n', example: '300 r/min' }),
  },
  outputs: {
    bladePass: output(frequency('Blade pass, as what stands meets it', 'f_b'), 'f_b = z_b · n'),
    vanePass: optionalOutput(frequency('Vane pass, as a point of the wheel meets it', 'f_v'), 'f_v = z_v · n'),
    commonOrder: optionalOutput(
      countField('Lowest order at which both rows repeat together', { symbol: 'k' }),
      'k = lcm(z_b, z_v)',
    ),
    common: optionalOutput(frequency('Frequency of that order', 'f_k'), 'f_k = k · n'),
    nodeDiameters: optionalOutput(
      countField('Fewest node diameters among the first four multiples of both rows; 0 shakes all at once', {
        symbol: 'd',
        least: 0,
      }),
      'd = min |p · z_v − m · z_b| for m, p = 1..4',
    ),
    strongest: optionalOutput(frequency('Multiple of the blade pass of that pressure field', 'f_d'), 'f_d = m · f_b'),
  },
  holds: 'blades of a row at equal angles; the sense of rotation is left out',
  sources: [clause(tradePractice, 'vane and blade pass: count times speed'), clause(hydraulicTurbinePractice)],
  evaluate: ({ blades: zb, vanes: zv, speed }) => {
    const n = Math.abs(speed);
    const rows = zv === undefined ? undefined : { running: zb, standing: zv };
    const meeting = rows && rowMeetings(rows)[0]!;
    return {
      bladePass: si('frequency', zb * n),
      vanePass: zv === undefined ? undefined : si('frequency', zv * n),
      commonOrder: rows && commonOrder(rows),
      common: rows && si('frequency', commonOrder(rows) * n),
      nodeDiameters: meeting?.nodeDiameters,
      strongest: meeting && si('frequency', meeting.m * zb * n),
    };
  },
  example: { blades: '13', vanes: '20', speed: '300 r/min' },
});
