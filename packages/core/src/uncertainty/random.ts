import { Broken } from '../quantity/index.ts';

/** A stream of random numbers that one seed settles: the same seed gives the same stream on every machine. */
export interface Random {
  /** Uniform, strictly between 0 and 1, in steps of 2⁻⁵³. */
  uniform(): number;
  /** Normal, of mean 0 and standard deviation 1. */
  normal(): number;
  /** Chi-square with the given degrees of freedom, 2 or more. */
  chiSquare(degreesOfFreedom: number): number;
}

/** The 32-bit generator xoshiro128** of Blackman and Vigna (2018); the four words of its state are not all zero. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state.map((word) => word | 0) as [number, number, number, number];
  if ((a | b | c | d) === 0) throw new Broken('the state of the generator is not all zero', { state });
  return () => {
    const scrambled = Math.imul(turned(Math.imul(b, 5), 7), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turned(d, 11);
    return scrambled >>> 0;
  };
}

function turned(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/** Four words that differ in about half their bits between neighbouring seeds (the finaliser of MurmurHash3). */
function stateOf(seed: number): [number, number, number, number] {
  let counter = seed | 0;
  const word = () => {
    counter = (counter + 0x9e3779b9) | 0;
    let mixed = counter;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  return [word(), word(), word(), word()];
}

/** Uniform numbers in (0, 1) and normal ones of mean 0 and standard deviation 1, the same for the same seed. */
export function randomFrom(seed: number): Random {
  const word = xoshiro128(stateOf(seed));
  const uniform = () => ((word() >>> 5) * 67_108_864 + (word() >>> 6) + 0.5) / 9_007_199_254_740_992;
  let spare: number | undefined;

  // Marsaglia's polar method: a point in the unit disc gives two normal numbers, and the second waits for its turn.
  const normal = () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * stretch;
      return x * stretch;
    }
  };

  // Marsaglia and Tsang (2000): a gamma number of shape ν/2 by squeezing a cubed normal.
  const chiSquare = (degreesOfFreedom: number) => {
    const d = degreesOfFreedom / 2 - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const cube = (1 + c * x) ** 3;
      if (cube <= 0) continue;
      const u = uniform();
      if (u < 1 - 0.0331 * x ** 4) return 2 * d * cube;
      if (Math.log(u) < 0.5 * x * x + d - d * cube + d * Math.log(cube)) return 2 * d * cube;
    }
  };
  return { uniform, normal, chiSquare };
}
