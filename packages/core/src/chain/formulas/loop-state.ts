/** Currents of a two-wire loop, in amperes. */
export const liveZero = 0.004;
export const fullScale = 0.02;
/** Between these a transmitter tells a measured value; it holds them where the value lies beyond. NAMUR NE 43. */
export const measuringCurrents = { low: 0.0038, high: 0.0205 } as const;
/** At or below, and at or above, a transmitter tells its own failure. NAMUR NE 43. */
export const faultCurrents = { low: 0.0036, high: 0.021 } as const;

/** What a loop current means, from the lowest to the highest. */
export const loopStates = [
  'fault-low',
  'not-usable-low',
  'under-range',
  'measuring',
  'over-range',
  'not-usable-high',
  'fault-high',
] as const;
export type LoopState = (typeof loopStates)[number];

/** Upper end of each state in milliamperes, and whether the end itself belongs to it. */
const ends: readonly { readonly state: LoopState; readonly to: number; readonly included: boolean }[] = [
  { state: 'fault-low', to: 3.6, included: true },
  { state: 'not-usable-low', to: 3.8, included: false },
  { state: 'under-range', to: 4, included: false },
  { state: 'measuring', to: 20, included: true },
  { state: 'over-range', to: 20.5, included: true },
  { state: 'not-usable-high', to: 21, included: false },
];

/**
 * What a loop current says. A value is told between 3.8 and 20.5 mA; below 4 and above 20 mA it lies outside the range.
 * From 3.6 to 3.8 and from 20.5 to 21 mA nothing is told: keep the last value, or mark it uncertain. The current is
 * read to 1 nA, so that a limit written in milliamperes is met exactly. Source: NAMUR NE 43 (second-hand).
 */
export function loopState(current: number): LoopState {
  const milliamperes = Math.round(current * 1e9) / 1e6;
  const found = ends.find(({ to, included }) => milliamperes < to || (included && milliamperes === to));
  return found?.state ?? 'fault-high';
}

/** Whether the current tells a value at all. */
export function tellsValue(state: LoopState): boolean {
  return state === 'under-range' || state === 'measuring' || state === 'over-range';
}
