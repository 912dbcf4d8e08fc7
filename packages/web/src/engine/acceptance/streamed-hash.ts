/** SHA-256 of FIPS 180-4, fed piece by piece: what a browser offers wants the whole file at once. */
class StreamedSha256 {
  readonly #state = Uint32Array.of(...fractions(8, 2));
  readonly #block = new Uint8Array(64);
  readonly #words = new Uint32Array(64);
  #filled = 0;
  #length = 0;

  update(bytes: Uint8Array): this {
    this.#length += bytes.length;
    for (let at = 0; at < bytes.length; ) {
      const taken = Math.min(64 - this.#filled, bytes.length - at);
      this.#block.set(bytes.subarray(at, at + taken), this.#filled);
      this.#filled += taken;
      at += taken;
      if (this.#filled === 64) this.#compress();
    }
    return this;
  }

  digest(_form: 'hex'): string {
    const bits = BigInt(this.#length) * 8n;
    const padding = new Uint8Array(((119 - (this.#length % 64)) % 64) + 9);
    padding[0] = 0x80;
    new DataView(padding.buffer).setBigUint64(padding.length - 8, bits);
    this.update(padding);
    return [...this.#state].map((word) => word.toString(16).padStart(8, '0')).join('');
  }

  #compress(): void {
    const words = this.#words;
    const view = new DataView(this.#block.buffer);
    for (let t = 0; t < 16; t++) words[t] = view.getUint32(4 * t);
    for (let t = 16; t < 64; t++) {
      const [early, late] = [words[t - 15]!, words[t - 2]!];
      const first = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
      const second = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
      words[t] = words[t - 16]! + first + words[t - 7]! + second;
    }
    let [a, b, c, d, e, f, g, h] = this.#state as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    for (let t = 0; t < 64; t++) {
      const sum = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
      const one = (h + sum + ((e & f) ^ (~e & g)) + constants[t]! + words[t]!) | 0;
      const other = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + other) | 0];
    }
    for (const [index, value] of [a, b, c, d, e, f, g, h].entries()) this.#state[index]! += value;
    this.#filled = 0;
  }
}

function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

/** The first 32 bits behind the point of roots of the first primes, as the standard defines its constants. */
function fractions(count: number, root: 2 | 3): readonly number[] {
  const primes: number[] = [];
  for (let candidate = 2; primes.length < count; candidate++) {
    if (primes.every((prime) => candidate % prime !== 0)) primes.push(candidate);
  }
  return primes.map((prime) => Number(wholeRoot(BigInt(prime) << BigInt(32 * root), root) & 0xffff_ffffn));
}

/** The whole part of a root, by halving. */
function wholeRoot(of: bigint, root: 2 | 3): bigint {
  let [low, high] = [0n, 1n << 40n];
  while (high - low > 1n) {
    const middle = (low + high) >> 1n;
    if (middle ** BigInt(root) <= of) low = middle;
    else high = middle;
  }
  return low;
}

const constants = fractions(64, 3);

/** Takes the place of the function of the same name where there is a page and no Node. */
export function createHash(_algorithm: 'sha256'): StreamedSha256 {
  return new StreamedSha256();
}
