/** A number between two bounds, in coherent SI units: what was written may be rounded. */
export interface Between {
  readonly low: number;
  readonly high: number;
}

/** Factors of the units that stand in formulas, written down here anew and not taken from what is tested. */
const units: Readonly<Record<string, number>> = {
  Hz: 1,
  kHz: 1e3,
  MHz: 1e6,
  'r/min': 1 / 60,
  '1/s': 1,
  'mm/s': 1e-3,
  'in/s': 0.0254,
  µm: 1e-6,
  mm: 1e-3,
  m: 1,
  mil: 25.4e-6,
  in: 0.0254,
  ft: 0.3048,
  g: 9.80665,
  mg: 9.80665e-3,
  µg: 9.80665e-6,
  V: 1,
  mV: 1e-3,
  µV: 1e-6,
  A: 1,
  mA: 1e-3,
  µA: 1e-6,
  mΩ: 1e-3,
  Ω: 1,
  kΩ: 1e3,
  MΩ: 1e6,
  GΩ: 1e9,
  pF: 1e-12,
  nF: 1e-9,
  µF: 1e-6,
  µH: 1e-6,
  mH: 1e-3,
  H: 1,
  W: 1,
  mW: 1e-3,
  kW: 1e3,
  'pF/m': 1e-12,
  'pF/ft': 1e-12 / 0.3048,
  'µH/m': 1e-6,
  'µH/ft': 1e-6 / 0.3048,
  'µH/Ω': 1e-6,
  µs: 1e-6,
  ms: 1e-3,
  s: 1,
  h: 3600,
  days: 86_400,
  '%': 0.01,
  '%/K': 0.01,
  K: 1,
  dB: 1,
  '°': Math.PI / 180,
  'N/m': 1,
  'mV/g': 1e-3 / 9.80665,
  'mV/(mm/s)': 1,
  'mV/(in/s)': 1e-3 / 0.0254,
  'mV/µm': 1e3,
  'mV/mil': 1e-3 / 25.4e-6,
  'µg/√Hz': 9.80665e-6,
  '(µm/s)/√Hz': 1e-6,
  'nm/√Hz': 1e-9,
  'nV/√Hz': 1e-9,
  'µV/√Hz': 1e-6,
};

/** Longest first, so that `mV/g` is not read as `mV`. */
const unitNames = Object.keys(units).sort((a, b) => b.length - a.length);
const amount = /^\d+(?:\.\d+)?(?:e-?\d+)?/;
const detector = /^ (?:rms|pk|pp|peak|derived peak|average)\b(?: of a sine)?/;
const band = /^ \d[\d.]*\.\.\d[\d.]* Hz/;

class Unread extends Error {}

/**
 * What the right-hand side of a substituted formula comes to, worked out from the text alone, and what it says it comes
 * to; nothing where it holds words or signs that are no arithmetic.
 */
export function substitutedValue(
  text: string,
): { readonly worked: Between; readonly said: Between; readonly result: string } | undefined {
  const parts = text.split(' = ');
  if (parts.length < 3) return undefined;
  const result = parts.at(-1)!;
  const grams = /N\/m/.test(text);
  try {
    return { worked: read(parts.at(-2)!, grams), said: read(result, grams), result };
  } catch (error) {
    if (error instanceof Unread) return undefined;
    throw error;
  }
}

/** A number with its unit as it stands on the screen. */
export function shownValue(text: string): Between | undefined {
  try {
    return read(text, false);
  } catch (error) {
    if (error instanceof Unread) return undefined;
    throw error;
  }
}

export function overlap(a: Between, b: Between): boolean {
  const slack = 1e-9 * Math.max(Math.abs(a.low), Math.abs(b.high), 1e-30);
  return a.low <= b.high + slack && b.low <= a.high + slack;
}

function read(text: string, grams: boolean): Between {
  const plain = text.replaceAll('\u2212', '-').replaceAll('\u00a0', ' ').replace(/^\+/, '');
  const reader = new Arithmetic(plain, grams);
  return reader.whole();
}

class Arithmetic {
  #rest: string;
  readonly #grams: boolean;

  constructor(text: string, grams: boolean) {
    this.#rest = text;
    this.#grams = grams;
  }

  whole(): Between {
    const value = this.#sum();
    if (this.#rest.trim() !== '') throw new Unread(this.#rest);
    return value;
  }

  #take(sign: string): boolean {
    const rest = this.#rest.trimStart();
    if (!rest.startsWith(sign)) return false;
    this.#rest = rest.slice(sign.length);
    return true;
  }

  #sum(): Between {
    let value = this.#product();
    for (;;) {
      if (this.#take('+')) value = plus(value, this.#product());
      else if (this.#take('-')) value = plus(value, times(this.#product(), exact(-1)));
      else return value;
    }
  }

  #product(): Between {
    let value = this.#power();
    for (;;) {
      if (this.#take('·')) value = times(value, this.#power());
      else if (this.#take('/')) value = over(value, this.#power());
      else return value;
    }
  }

  #power(): Between {
    if (this.#take('-')) {
      // Below zero a temperature is a number below zero, not zero less a temperature.
      return /^\d[\d.]* °[CF]/.test(this.#rest) ? this.#number(-1) : times(this.#power(), exact(-1));
    }
    const value = this.#atom();
    if (this.#take('^')) return raised(value, this.#atom());
    if (this.#take('²')) return raised(value, exact(2));
    return value;
  }

  #atom(): Between {
    if (this.#take('√')) return mapped(this.#atom(), Math.sqrt);
    if (this.#take('(')) return this.#closed(')');
    if (this.#take('|')) {
      const inner = this.#closed('|');
      return inner.low <= 0 && inner.high >= 0
        ? { low: 0, high: Math.max(-inner.low, inner.high) }
        : mapped(inner, Math.abs);
    }
    const word = /^\s*([a-z]+\d?)(?=[ (])/.exec(this.#rest)?.[1];
    if (word !== undefined && functions[word] !== undefined) {
      this.#take(word);
      if (!this.#take('(')) return functions[word]([this.#power()]);
      const given = [this.#sum()];
      while (this.#take(',')) given.push(this.#sum());
      if (!this.#take(')')) throw new Unread(this.#rest);
      return functions[word](given);
    }
    if (this.#take('π')) return exact(Math.PI);
    return this.#number();
  }

  #closed(sign: string): Between {
    const value = this.#sum();
    if (!this.#take(sign)) throw new Unread(this.#rest);
    return value;
  }

  #number(sign = 1): Between {
    this.#rest = this.#rest.trimStart().replace(/^±/, '');
    const digits = amount.exec(this.#rest)?.[0];
    if (digits === undefined) throw new Unread(this.#rest);
    this.#rest = this.#rest.slice(digits.length);
    if (this.#take('π')) return mapped(exact(Math.PI), (each) => each * Number(digits));
    const unit = this.#unit();
    const bare = unit === undefined && !digits.includes('.');
    const value = sign * Number(digits);
    const half = bare ? 0 : halfStep(digits, unit);
    const { factor, offset } = scaleOf(unit, this.#grams);
    return { low: (value - half) * factor + offset, high: (value + half) * factor + offset };
  }

  #unit(): string | undefined {
    const temperature = /^ °[CF]/.exec(this.#rest)?.[0];
    if (temperature !== undefined) {
      this.#rest = this.#rest.slice(temperature.length);
      return temperature.trim();
    }
    const found = unitNames.find((name) =>
      new RegExp(`^ ?${name.replace(/[/().]/g, String.raw`\$&`)}(?![\\p{L}\\d]|/√?\\p{L})`, 'u').test(this.#rest),
    );
    if (found === undefined) return undefined;
    this.#rest = this.#rest.replace(/^ ?/, '').slice(found.length);
    const read = detector.exec(this.#rest)?.[0];
    if (read !== undefined) {
      this.#rest = this.#rest.slice(read.length);
      this.#rest = this.#rest.replace(band, '');
    }
    return found;
  }
}

function scaleOf(unit: string | undefined, grams: boolean): { factor: number; offset: number } {
  if (unit === undefined) return { factor: 1, offset: 0 };
  if (unit === '°C') return { factor: 1, offset: 273.15 };
  if (unit === '°F') return { factor: 5 / 9, offset: 459.67 * (5 / 9) };
  if (unit === 'g' && grams) return { factor: 1e-3, offset: 0 };
  return { factor: units[unit]!, offset: 0 };
}

/** Half of the last digit that may have been written; zeros at the end are not, so a short number stands for three digits. */
function halfStep(digits: string, unit: string | undefined): number {
  const value = Number(digits);
  if (unit === 'dB') return 0.05;
  const [mantissa, power = '0'] = digits.split('e') as [string, string?];
  const significant = mantissa.replace('.', '').replace(/^0+/, '').length;
  const places = mantissa.includes('.') ? mantissa.length - mantissa.indexOf('.') - 1 : 0;
  const last = 0.5 * 10 ** (Number(power) - places);
  return significant < 3 ? Math.min(last, Math.abs(value) * 5e-3) : last;
}

type Function = (given: readonly Between[]) => Between;

const functions: Readonly<Record<string, Function>> = {
  min: (all) => ({ low: Math.min(...all.map((each) => each.low)), high: Math.min(...all.map((each) => each.high)) }),
  max: (all) => ({ low: Math.max(...all.map((each) => each.low)), high: Math.max(...all.map((each) => each.high)) }),
  lg: ([of]) => mapped(of!, Math.log10),
  cos: ([of]) => hull([Math.cos(of!.low), Math.cos(of!.high)]),
  sin: ([of]) => hull([Math.sin(of!.low), Math.sin(of!.high)]),
  round: ([of]) => ({ low: Math.round(of!.low), high: Math.round(of!.high) }),
  peak: ([of]) => hull([of!.low / 2, of!.high, of!.high * Math.SQRT2]),
  gcd: ([a, b]) => exact(gcd(a!.low, b!.low)),
  // The next of 1, 2, 5 · 10ⁿ above it.
  next: ([of]) => hull([nextOf(of!.low), nextOf(of!.high)]),
  // The fewest of 400 · 2ⁿ that are not below any of them, at most 409600.
  fewest: (all) => hull([fewestOf(all.map((each) => each.low)), fewestOf(all.map((each) => each.high))]),
};

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

function nextOf(value: number): number {
  for (let decade = 1e-6; ; decade *= 10) {
    for (const step of [1, 2, 5]) if (step * decade > value * (1 + 1e-9)) return step * decade;
  }
}

function fewestOf(least: readonly number[]): number {
  let lines = 400;
  while (lines < 409_600 && least.some((each) => lines < each * (1 - 1e-12))) lines *= 2;
  return lines;
}

function exact(value: number): Between {
  return { low: value, high: value };
}

function hull(values: readonly number[]): Between {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (!Number.isFinite(low) || !Number.isFinite(high)) throw new Unread('beyond all numbers');
  return { low, high };
}

function mapped({ low, high }: Between, of: (value: number) => number): Between {
  return hull([of(Math.max(low, Number.NEGATIVE_INFINITY)), of(high)].map((each) => (Number.isNaN(each) ? 0 : each)));
}

function plus(a: Between, b: Between): Between {
  return { low: a.low + b.low, high: a.high + b.high };
}

function times(a: Between, b: Between): Between {
  return hull([a.low * b.low, a.low * b.high, a.high * b.low, a.high * b.high]);
}

function over(a: Between, b: Between): Between {
  if (b.low <= 0 && b.high >= 0) throw new Unread('divided by what may be zero');
  return times(a, hull([1 / b.low, 1 / b.high]));
}

function raised(a: Between, to: Between): Between {
  const ends = [a.low, a.high].flatMap((base) => [to.low, to.high].map((power) => base ** power));
  return hull(a.low < 0 && a.high > 0 && to.low % 2 === 0 ? [...ends, 0] : ends);
}
