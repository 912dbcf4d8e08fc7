import { type Band, type Level, level, type Motion } from '../../../quantity/index.ts';
import type { Boundaries } from '../zone-table.ts';

/** Boundaries A/B, B/C and C/D as a table prints them. */
export type Three = readonly [ab: number, bc: number, cd: number];

function three(values: Three, each: (value: number) => Level): Boundaries {
  const [ab, bc, cd] = values;
  return { ab: each(ab), bc: each(bc), cd: each(cd) };
}

/** A factor that stays exact in decimals: 2.3 mm/s is 2.3/1000 m/s. */
const scaled = (quantity: Motion, divisor: number, detector: Level['detector'], band?: Band) => (value: number) =>
  level(quantity, value / divisor, detector, band);

/** Boundaries in mm/s rms. */
export function millimetresPerSecond(values: Three, band: Band): Boundaries {
  return three(values, scaled('velocity', 1e3, 'rms', band));
}

/** Boundaries in micrometres rms. */
export function micrometres(values: Three, band: Band): Boundaries {
  return three(values, scaled('displacement', 1e6, 'rms', band));
}

/** Boundaries in micrometres peak-to-peak; shaft vibration has no band here. */
export function micrometresPeakToPeak(values: Three, band?: Band): Boundaries {
  return three(values, scaled('displacement', 1e6, 'peak-to-peak', band));
}

export const usualBand: Band = { low: 10, high: 1000 };
export const slowBand: Band = { low: 2, high: 1000 };
export const kilowatt = 1e3;
/** One revolution per minute in hertz. */
export const perMinute = 1 / 60;
