/** Pass-band edge of a converter's own filter over its rate: 1/2.56, beyond which lines are not read. Common practice, no source. */
export const passBand = 1 / 2.56;

/**
 * The filter before a converter that samples at `rate`: 1 up to rate/2.56, then half a cosine down to nothing at
 * rate·(1 − 1/2.56), whose alias falls on rate/2.56 again. Without delay, as converters compensate their own.
 */
export function antiAliasing(frequency: number, rate: number): number {
  const [pass, stop] = [passBand * rate, (1 - passBand) * rate];
  if (frequency <= pass) return 1;
  return frequency >= stop ? 0 : 0.5 + 0.5 * Math.cos((Math.PI * (frequency - pass)) / (stop - pass));
}

/** The converter: its range to both sides, and its smallest step. */
export interface Converter {
  readonly range: number;
  readonly step: number;
}

export interface Converted {
  readonly samples: Float64Array;
  readonly atRange: number;
}

/** Every n-th sample from the end of the lead, in whole steps and inside the range. */
export function converted(
  samples: Float64Array,
  lead: number,
  every: number,
  converter: Converter | undefined,
): Converted {
  const count = Math.floor((samples.length - lead + every - 1) / every);
  const codes = new Float64Array(count);
  let atRange = 0;
  for (let index = 0; index < count; index++) {
    const value = samples[lead + index * every]!;
    if (converter === undefined) {
      codes[index] = value;
      continue;
    }
    const { range, step } = converter;
    // Codes run from −range up to one step below +range.
    const inside = Math.min(range - step, Math.max(-range, Math.round(value / step) * step));
    if (value > range - step || value < -range) atRange += 1;
    codes[index] = inside;
  }
  return { samples: codes, atRange };
}
