/** What fixes the kinematics of one row of a rolling bearing; lengths in one unit, angle in radians. */
export interface BearingRow {
  readonly elements: number;
  readonly elementDiameter: number;
  readonly pitchDiameter: number;
  readonly contactAngle: number;
}

/** How often each event happens per turn of the rings. */
export interface BearingOrders {
  /** Turns of the cage per turn of the inner ring, the outer held, and the other way round. */
  readonly cageOfInner: number;
  readonly cageOfOuter: number;
  /** Per turn of the rings against each other. */
  readonly outerRing: number;
  readonly innerRing: number;
  readonly elementSpin: number;
}

/** k = (d/D)·cos φ: how much smaller than the pitch circle the circle of the contacts is, as a ratio. */
export function diameterRatio(row: BearingRow): number {
  const { elementDiameter: d, pitchDiameter: D, contactAngle: φ } = row;
  return (d / D) * Math.cos(φ);
}

/**
 * Pure rolling, k = (d/D)·cos φ: cage (1 − k)/2 of the inner and (1 + k)/2 of the outer ring; outer ring n/2·(1 − k),
 * inner ring n/2·(1 + k), element spin D/(2d)·(1 − k²) of the speed between the rings. Source: Randall and Antoni 2011
 * (from memory), general form from memory.
 */
export function bearingOrders(row: BearingRow): BearingOrders {
  const { elements: n, elementDiameter: d, pitchDiameter: D } = row;
  const k = diameterRatio(row);
  return {
    cageOfInner: (1 - k) / 2,
    cageOfOuter: (1 + k) / 2,
    outerRing: (n / 2) * (1 - k),
    innerRing: (n / 2) * (1 + k),
    elementSpin: (D / (2 * d)) * (1 - k * k),
  };
}

/** The frequencies in hertz for speeds of the rings in hertz, with their sense of rotation. */
export function bearingFrequencies(row: BearingRow, innerSpeed: number, outerSpeed = 0) {
  const orders = bearingOrders(row);
  const between = Math.abs(innerSpeed - outerSpeed);
  return {
    cage: Math.abs(orders.cageOfInner * innerSpeed + orders.cageOfOuter * outerSpeed),
    outerRing: orders.outerRing * between,
    innerRing: orders.innerRing * between,
    elementSpin: orders.elementSpin * between,
    elementSpinTwice: 2 * orders.elementSpin * between,
  };
}

/** The largest element diameter at which n of them stand side by side on the pitch circle: D·sin(π/n). */
export function largestElement(elements: number, pitchDiameter: number): number {
  return elements < 2 ? pitchDiameter : pitchDiameter * Math.sin(Math.PI / elements);
}
