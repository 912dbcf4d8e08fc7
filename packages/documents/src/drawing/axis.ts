/** One mark of an axis: where, what it says, and whether it is a main one. */
export interface Tick {
  readonly value: number;
  readonly at: number;
  /** Left out where there is no room. */
  readonly text?: string;
  readonly main: boolean;
}

/** Turns values of one scale into places on the page. */
export interface Axis {
  readonly low: number;
  readonly high: number;
  at(value: number): number;
  readonly ticks: readonly Tick[];
}

export interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Where an axis stands on the page: of its low end and of its high end. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

const steps = [1, 2, 5] as const;

/** The least of 1, 2, 5 · 10ⁿ that is not below a value, and the largest that is not above it. */
export function roundUp(value: number): number {
  const decade = decadeBelow(value);
  return [...steps, 10].map((step) => clean(step * decade)).find((each) => each >= value * (1 - 1e-9))!;
}

export function roundDown(value: number): number {
  const decade = decadeBelow(value);
  return steps.map((step) => clean(step * decade)).findLast((each) => each <= value * (1 + 1e-9))!;
}

function decadeBelow(value: number): number {
  return 10 ** Math.floor(Math.log10(value) + 1e-9);
}

/** 0.30000000000000004 as 0.3. */
function clean(value: number): number {
  return Number(value.toPrecision(12));
}

/** The values 1, 2, 5 · 10ⁿ from low to high, ends included. */
export function oneTwoFive({ low, high }: Ends): readonly number[] {
  const values: number[] = [];
  for (let decade = decadeBelow(low); decade <= high * (1 + 1e-9); decade *= 10) {
    for (const step of steps) {
      const value = clean(step * decade);
      if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) values.push(value);
    }
  }
  return values;
}

/** `0.05`, `1`, `500`, `20 k`, `3 M`. */
export function shortNumber(value: number): string {
  const size = Math.abs(value);
  const sign = value < 0 ? '\u2212' : '';
  if (size >= 1e6) return `${sign}${clean(size / 1e6)} M`;
  if (size >= 1e4) return `${sign}${clean(size / 1e3)} k`;
  if (size !== 0 && size < 1e-4) return `${sign}${size.toExponential(0).replace('-', '\u2212')}`;
  return `${sign}${clean(size)}`;
}

/**
 * A logarithmic axis with 1-2-5 marks. All are written where a decade is longer than `roomy` units, otherwise only the
 * decades, and only every second or third of them where even those are close.
 */
export function logAxis(ends: Ends, stretch: Stretch, roomy = 84, write = shortNumber): Axis {
  const { low, high } = ends;
  const length = Math.abs(stretch.to - stretch.from);
  const decades = Math.log10(high / low);
  const perDecade = length / decades;
  const at = (value: number) => stretch.from + ((stretch.to - stretch.from) * Math.log10(value / low)) / decades;
  const every = Math.max(1, Math.ceil(roomy / 4 / perDecade));
  const ticks = oneTwoFive(ends).map((value): Tick => {
    const exponent = Math.round(Math.log10(value) * 1e6) / 1e6;
    const main = Number.isInteger(exponent);
    const written = perDecade >= roomy || (main && exponent % every === 0);
    return { value, at: at(value), main, ...(written ? { text: write(value) } : {}) };
  });
  return { low, high, at, ticks };
}

/** A linear axis with about so many marks at 1, 2 or 5 · 10ⁿ. */
export function linearAxis(ends: Ends, stretch: Stretch, about = 6, write = shortNumber): Axis {
  const { low, high } = ends;
  const at = (value: number) => stretch.from + ((stretch.to - stretch.from) * (value - low)) / (high - low);
  const step = roundUp((high - low) / about);
  const ticks: Tick[] = [];
  for (let count = Math.ceil(low / step - 1e-9); count * step <= high + 1e-9 * step; count++) {
    const value = clean(count * step);
    ticks.push({ value, at: at(value), main: true, text: write(value) });
  }
  return { low, high, at, ticks };
}
