import {
  type Level,
  level,
  levelField,
  numberField,
  optional,
  quantityField,
  Refusal,
  si,
} from '../../quantity/index.ts';
import { iso80000x3 } from '../../source/iso-80000-3.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { optionalOutput, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

const gravity = 9.80665;

/** Slope at the top of a cantilever over its deflection and height, loaded at its top: 3/2. */
export const slopeOfTipLoad = 1.5;

/** g·sin α in m/s²: what a sensor that reads down to zero shows when its axis leans by α radians from level. */
export function gravityOfTilt(angle: number): number {
  return gravity * Math.sin(angle);
}

/**
 * k·g/(ω²·H): gravity that a sensor on top of a tower reads while the tower bends, over the acceleration of its motion;
 * k the slope over deflection and height, H the height in metres, f in hertz. Every accelerometer that works at f reads
 * it, whether it reads down to zero or not. Small angles.
 */
export function gravityOfBending(frequency: number, height: number, slope: number = slopeOfTipLoad): number {
  return (slope * gravity) / ((2 * Math.PI * frequency) ** 2 * height);
}

export const tiltGravity = working({
  name: 'tilt-gravity',
  title: 'Gravity that an accelerometer reads when its axis leans',
  inputs: {
    angle: optional(
      quantityField('angle', 'How far the sensing axis leans from level, at rest', { symbol: 'α', example: '1 deg' }),
    ),
    frequency: optional(
      quantityField('frequency', 'Frequency at which the structure bends', { symbol: 'f', example: '0.31 Hz' }),
    ),
    height: optional(quantityField('length', 'Height of the sensor above the foot', { symbol: 'H', example: '90 m' })),
    slope: optional(
      numberField('Slope at the sensor, times height over deflection; 1.5 of a beam loaded at its top where left out', {
        symbol: 'k',
        example: '1.5',
      }),
    ),
  },
  outputs: {
    standing: optionalOutput(
      levelField(['acceleration'], 'Steady reading of a sensor that reads down to zero', {
        symbol: 'a_0',
        example: '0.01745 g peak',
      }),
      'a_0 = g · sin α',
    ),
    contamination: optionalOutput(
      quantityField('fraction', 'Gravity in the reading of the motion, over the motion', { symbol: 'c' }),
      'c = k · g / ((2π · f)^2 · H)',
    ),
  },
  holds:
    'small angles and motion in the plane of bending; the part adds to the reading in phase with it, and counts for sensors down to zero and for others that still read at that frequency',
  sources: [
    clause(iso80000x3, 'standard acceleration of free fall'),
    clause(tradePractice, 'slope of a cantilever loaded at its top', 'from memory'),
  ],
  evaluate: ({ angle, frequency, height, slope }) => {
    if (angle === undefined && (frequency === undefined || height === undefined)) {
      throw new Refusal({ read: '', expected: "'angle', or 'frequency' with 'height'; for example angle=\"1 deg\"" });
    }
    aboveZero({ frequency, height, slope });
    const standing: Level<'acceleration'> | undefined =
      angle === undefined ? undefined : level('acceleration', gravityOfTilt(Math.abs(angle)), 'peak');
    return {
      standing,
      contamination:
        frequency === undefined || height === undefined
          ? undefined
          : si('fraction', gravityOfBending(frequency, height, slope ?? slopeOfTipLoad)),
    };
  },
  example: { angle: '1 deg', frequency: '0.31 Hz', height: '90 m' },
});
