/** What the output of constant-current electronics can do about its bias, in volts, and how fast, in volts a second. */
export interface OutputLimits {
  readonly top: number;
  readonly bottom: number;
  readonly slew: number;
  /** Corner with which an overload of it is forgotten, in hertz: its own lower one. */
  readonly recovery: number;
}

export interface DrivenOutput {
  readonly samples: Float64Array;
  /** Samples at the top and at the bottom of the swing, and those at which the cable took all the current. */
  readonly atTop: number;
  readonly atBottom: number;
  readonly slewed: number;
}

/**
 * The output as far as it can follow what is wanted of it, sample by sample. It stops at the ends of its swing; what it
 * could not give stays in the element as charge and leaks away with the lower corner ω of the electronics: an offset δ
 * with dδ/dt = −ω·δ + ω·(given − wanted) lies in what is wanted afterwards. (Of a charge amplifier, C_f·dV/dt = −dq/dt −
 * V/R_f with V held at the rail; derived here.) Between two samples it moves by no more than I/C lets it.
 */
export function drivenOutput(wanted: Float64Array, rate: number, limits: OutputLimits, from: number): DrivenOutput {
  const samples = new Float64Array(wanted.length);
  const { top, bottom } = limits;
  const reach = limits.slew / rate;
  const leak = 1 - Math.exp((-2 * Math.PI * limits.recovery) / rate);
  let [offset, output] = [0, Math.min(top, Math.max(-bottom, wanted[0] ?? 0))];
  let [atTop, atBottom, slewed] = [0, 0, 0];
  for (let index = 0; index < wanted.length; index++) {
    const asked = wanted[index]! - offset;
    const given = Math.min(top, Math.max(-bottom, asked));
    const move = given - output;
    const short = Math.abs(move) > reach * (1 + 1e-12);
    output = short ? output + Math.sign(move) * reach : given;
    offset += leak * (given - asked - offset);
    samples[index] = output;
    if (index < from) continue;
    if (asked > top) atTop += 1;
    if (asked < -bottom) atBottom += 1;
    if (short) slewed += 1;
  }
  return { samples, atTop, atBottom, slewed };
}
