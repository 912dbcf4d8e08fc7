import type { Motion } from '../../quantity/index.ts';

/** The usual unit of a motion on an axis, and how many of it one in SI is. */
export const motionUnits: Readonly<Record<Motion, { readonly unit: string; readonly factor: number }>> = {
  acceleration: { unit: 'm/s²', factor: 1 },
  velocity: { unit: 'mm/s', factor: 1e3 },
  displacement: { unit: 'µm', factor: 1e6 },
};
