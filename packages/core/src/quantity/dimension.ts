/**
 * Exponents of metre, kilogram, second, ampere, kelvin, radian. Halves occur: noise densities are per √Hz. SI counts
 * the radian as one; here it is kept, so that degrees are no percentage and 100 rad/s are not read as 100 Hz.
 */
export type Dimension = readonly [number, number, number, number, number, number];

export const none: Dimension = [0, 0, 0, 0, 0, 0];

export function times(a: Dimension, b: Dimension, power = 1): Dimension {
  return [
    a[0] + power * b[0],
    a[1] + power * b[1],
    a[2] + power * b[2],
    a[3] + power * b[3],
    a[4] + power * b[4],
    a[5] + power * b[5],
  ];
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, index) => exponent === b[index]);
}
