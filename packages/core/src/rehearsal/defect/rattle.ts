import type { DefectContext } from './defect-kind.ts';

/** A foot that lifts strikes once per turn: a short blow, half of the rms of the motion times eight high. From memory. */
export function rattle(samples: Float64Array, { rate, turns, random }: DefectContext): void {
  let square = 0;
  for (const each of samples) square += each * each;
  const peak = 4 * Math.sqrt(square / Math.max(1, samples.length));
  const length = Math.max(2, Math.round(rate * 5e-4));
  for (let index = 1; index < samples.length; index++) {
    if (Math.floor(turns[index]!) === Math.floor(turns[index - 1]!)) continue;
    const blow = peak * (1 + 0.2 * random.normal());
    for (let k = 0; k < length && index + k < samples.length; k++) {
      samples[index + k]! += blow * Math.sin((Math.PI * k) / length);
    }
  }
}
