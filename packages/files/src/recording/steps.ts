/** In which steps a run of values goes. */
export interface Steps {
  /** Number of different finite values. */
  readonly distinct: number;
  /** Smallest distance between two different values. */
  readonly smallest: number | undefined;
  readonly whole: boolean;
  /** Bits after the point that every value keeps to, where all lie within ±1 as shares of a converter's full scale do. */
  readonly shareOfFullScale: number | undefined;
}

/** Converters of the trade have 16, 24 or 32 bits with their sign. */
const bitsAfterPoint = [15, 23, 31];

export function stepsOf(values: Float64Array): Steps {
  const sorted = [...new Set(values.filter((each) => Number.isFinite(each)))].sort((a, b) => a - b);
  let smallest: number | undefined;
  for (let index = 1; index < sorted.length; index++) {
    const step = sorted[index]! - sorted[index - 1]!;
    if (smallest === undefined || step < smallest) smallest = step;
  }
  const within = sorted.length > 0 && sorted[0]! >= -1 && sorted.at(-1)! <= 1;
  // Volts of a range of ten keep to these bits too, but all of them are multiples of five steps.
  const keepsTo = (bits: number) =>
    sorted.every((each) => Number.isInteger(each * 2 ** bits)) &&
    isPowerOfTwo(sorted.reduce((divisor, each) => commonDivisor(divisor, Math.abs(each) * 2 ** bits), 0));
  return {
    distinct: sorted.length,
    smallest,
    whole: sorted.length > 0 && sorted.every(Number.isInteger),
    shareOfFullScale: within ? bitsAfterPoint.find(keepsTo) : undefined,
  };
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

function isPowerOfTwo(value: number): boolean {
  return value > 0 && Number.isInteger(Math.log2(value));
}
