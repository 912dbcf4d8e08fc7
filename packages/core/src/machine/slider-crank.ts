/** Amplitudes of the piston acceleration in m/s² for a crank radius and rod length in metres and a speed in hertz. */
export interface PistonInertia {
  /** r·ω², at the speed. */
  readonly primary: number;
  /** r·ω²·λ, at twice the speed, with λ = r/l: the first term of the series in λ. */
  readonly secondary: number;
}

/**
 * Inertia of a piston on a crank of radius r, its rod of length l, to the first order in λ = r/l. The exact second order
 * is r·ω²·(λ + λ³/4 + 15·λ⁵/128 …), 3 % more at λ = 1/3. Source: reciprocating practice (from memory).
 */
export function pistonInertia(radius: number, rod: number, speed: number): PistonInertia {
  const ω = 2 * Math.PI * speed;
  const primary = radius * ω * ω;
  return { primary, secondary: (primary * radius) / rod };
}

/** Degrees of crank from one sample to the next: 360·f/f_s, both in hertz. */
export function crankStep(speed: number, samplingRate: number): number {
  return (360 * speed) / samplingRate;
}
