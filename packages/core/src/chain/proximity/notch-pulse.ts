import { quantityField, si } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from '../formulas/above-zero.ts';

/** Speed of the surface of a shaft, π·D·n, in m/s: diameter in metres, speed in hertz. */
export function surfaceSpeed(diameter: number, speed: number): number {
  return Math.PI * diameter * speed;
}

/** 10 to 90 % of a step through one corner: 0.35/f, in seconds. Exactly ln 9/(2π) = 0.3497. Any electronics textbook. */
export function riseTime(corner: number): number {
  return 0.35 / corner;
}

export const notchPulseWorking = working({
  name: 'notch-pulse',
  title: 'Pulse of a once-per-turn notch or key',
  inputs: {
    width: quantityField('length', 'Width along the circumference', { symbol: 'w', example: '12 mm' }),
    depth: quantityField('length', 'Depth of the notch, or height of the key', { symbol: 'h', example: '1.5 mm' }),
    diameter: quantityField('length', 'Diameter of the shaft there', { symbol: 'D', example: '110 mm' }),
    speed: quantityField('shaft speed', 'Shaft speed', { symbol: 'n', example: '11400 r/min' }),
    scaleFactor: quantityField('voltage per displacement', 'Scale factor of the set', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
    corner: quantityField('frequency', 'Upper corner of the set, −3 dB', { symbol: 'f_c', example: '10 kHz' }),
  },
  outputs: {
    surfaceSpeed: output(quantityField('velocity', 'Speed of the surface', { symbol: 'v' }), 'v = π · D · n'),
    pulse: output(quantityField('time', 'How long the probe looks into it', { symbol: 't_p' }), 't_p = w/v'),
    riseTime: output(quantityField('time', 'Rise time of the set', { symbol: 't_r' }), 't_r = 0.35/f_c'),
    swing: output(quantityField('voltage', 'Change of the voltage over it', { symbol: 'V_s' }), 'V_s = S · h'),
  },
  holds:
    'a notch wider than the spot the probe sees, and a swing inside the straight part; the electronics hold the voltage before that.',
  sources: [clause(api670, 'once-per-turn mark', 'from memory')],
  evaluate: ({ width, depth, diameter, speed, scaleFactor, corner }) => {
    aboveZero({ width, depth, diameter, speed, scaleFactor, corner });
    const surface = surfaceSpeed(diameter, speed);
    return {
      surfaceSpeed: si('velocity', surface),
      pulse: si('time', width / surface),
      riseTime: si('time', riseTime(corner)),
      swing: si('voltage', scaleFactor * depth),
    };
  },
  example: {
    width: '12 mm',
    depth: '1.5 mm',
    diameter: '110 mm',
    speed: '11400 r/min',
    'scale-factor': '7.87 mV/um',
    corner: '10 kHz',
  },
});
