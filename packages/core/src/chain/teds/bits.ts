/** A run of bits read as a number: the first bit of the stream, the lowest of byte 0, counts least. */
export function bitsAt(bytes: readonly number[], from: number, bits: number): number {
  let number = 0;
  for (let k = 0; k < bits; k++) {
    const bit = ((bytes[(from + k) >> 3] ?? 0) >> ((from + k) & 7)) & 1;
    number += bit * 2 ** k;
  }
  return number;
}

/** Runs of bits one after the other, filled up with zeros to whole bytes. */
export function bytesOf(runs: readonly { readonly code: number; readonly bits: number }[]): readonly number[] {
  const length = runs.reduce((sum, { bits }) => sum + bits, 0);
  const bytes = new Array<number>(Math.ceil(length / 8)).fill(0);
  let at = 0;
  for (const { code, bits } of runs) {
    for (let k = 0; k < bits; k++, at++) {
      const bit = Math.floor(code / 2 ** k) % 2;
      bytes[at >> 3]! |= bit << (at & 7);
    }
  }
  return bytes;
}
