import { separationSheet, wiringSheet } from '@soundpost/core';
import { sheet } from './sheet.ts';

/** Screens and earths of a point. */
export const wiring = sheet(wiringSheet, 'wiring of the point', 'screens and earths of a point');

/** Distances from power cables, for the whole plant. */
export const separation = sheet(separationSheet, 'separation', 'distances from power cables as the owner wants them');
