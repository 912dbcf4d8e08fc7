/** Rounding of the machine: far below the last digit of any certificate, so that typed equals stay equal. */
const rounding = 1e-12;

/** value ≤ limit. Equality passes; nothing but the rounding of binary numbers is forgiven. */
export function atMost(value: number, limit: number): boolean {
  return value <= limit + Math.abs(limit) * rounding;
}

/** A length for a document: whole metres, down, never to the nearest. */
export function wholeMetresDown(length: number): number {
  return Math.floor(length * (1 + rounding));
}
