/** How far two lines lie apart at one speed, and what tells them apart there with a Hann window. */
export interface Separation {
  /** Hertz of reference speed or line frequency. */
  readonly at: number;
  readonly state?: string;
  /** Of the one and of the other there, in hertz. */
  readonly frequencies: readonly [number, number];
  readonly difference: number;
  /** The line spacing that is needed: a third of the difference; nothing where they fall together. */
  readonly resolution?: number;
  /** The record that gives it: 1/resolution. */
  readonly recordLength?: number;
}

/** Two lines of a Hann spectrum are told apart where they lie three line spacings apart. Common practice, no source. */
export const hannSeparation = 3;

/** The line spacing and the record that tell two frequencies apart there, `apart` of them known exactly. */
export function separated(
  apart: number,
  at: number,
  frequencies: Separation['frequencies'],
  state: string | undefined,
): Separation {
  const difference = Math.abs(apart);
  const named = { frequencies, ...(state === undefined ? {} : { state }) };
  if (difference < 1e-9 * Math.max(1, at)) return { at, ...named, difference: 0 };
  const resolution = difference / hannSeparation;
  return { at, ...named, difference, resolution, recordLength: 1 / resolution };
}
