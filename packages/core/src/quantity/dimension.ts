/** Exponents of metre, kilogram, second, ampere, kelvin. Halves occur: noise densities are per √Hz. */
export type Dimension = readonly [number, number, number, number, number];

export const none: Dimension = [0, 0, 0, 0, 0];

export function times(a: Dimension, b: Dimension, power = 1): Dimension {
  return [a[0] + power * b[0], a[1] + power * b[1], a[2] + power * b[2], a[3] + power * b[3], a[4] + power * b[4]];
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, index) => exponent === b[index]);
}
