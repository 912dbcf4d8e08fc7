/**
 * Records for tests that another language makes digit for digit: every value of the noise is a whole number over 2³¹.
 */

/**
 * Evenly spread noise in [−1, 1): s ← 1664525·s + 1013904223 modulo 2³², x = s/2³¹ − 1. Its mean square is 1/3.
 * Source: the generator of Numerical Recipes (from memory).
 */
export function evenNoise(seed: number, length: number): Float64Array {
  let state = seed >>> 0;
  return Float64Array.from({ length }, () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  });
}

/** A sine: amplitude · cos(2π · turns · n + phase), `turns` its frequency over the sampling rate. */
export function madeTone(length: number, turns: number, amplitude = 1, phase = 0): Float64Array {
  return Float64Array.from({ length }, (_, n) => amplitude * Math.cos(2 * Math.PI * turns * n + phase));
}

/** The sum of records, sample by sample. */
export function added(...records: readonly Float64Array[]): Float64Array {
  return records[0]!.map((_, n) => records.reduce((total, each) => total + each[n]!, 0));
}

/** A record cut into blocks, `lengths` the number of samples of each in turn. */
export function blocksOf(record: Float64Array, ...lengths: readonly number[]): readonly Float64Array[] {
  const blocks: Float64Array[] = [];
  for (let start = 0, turn = 0; start < record.length; turn++) {
    const end = Math.min(record.length, start + lengths[turn % lengths.length]!);
    blocks.push(record.slice(start, end));
    start = end;
  }
  return blocks;
}
