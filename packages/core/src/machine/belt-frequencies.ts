/** Slip of a friction belt under load where nobody stated one. Common practice, no source. */
export const usualBeltSlip = { low: 0, high: 0.02 };

/** Turns of the belt per turn of a pulley: π·D/L, lengths in one unit. Source: trade notes (second-hand). */
export function beltTurns(pulleyDiameter: number, beltLength: number): number {
  return (Math.PI * pulleyDiameter) / beltLength;
}

/** Belt pass f = π·D·n·(1 − s)/L in hertz: D pulley, n its speed in hertz, L belt length, s slip on that pulley. */
export function beltPassFrequency(pulleyDiameter: number, pulleySpeed: number, beltLength: number, slip = 0): number {
  return beltTurns(pulleyDiameter, beltLength) * pulleySpeed * (1 - slip);
}

/** The shortest belt round two pulleys that nearly touch is longer than half of each rim and twice their mean diameter. */
export function shortestBelt(driving: number, driven: number): number {
  return (Math.PI / 2 + 1) * (driving + driven);
}
