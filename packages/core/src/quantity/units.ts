import { type Dimension, none } from './dimension.ts';

/** The standard acceleration of free fall, exact by definition. Source: 3rd CGPM (1901), in ISO 80000-3. */
export const standardGravity = 9.80665;

/** One international inch in metres, exact by definition (1959 agreement; ISO 31-1 annex). */
export const inch = 0.0254;

export interface Unit {
  readonly factor: number;
  readonly dimension: Dimension;
  /** Kelvin at the unit's zero, for °C and °F only. */
  readonly offset?: number;
  /** Says what was counted: no unit of a ratio, though it is a plain number too. */
  readonly counted?: true;
}

const prefixes: Readonly<Record<string, number>> = {
  T: 1e12,
  G: 1e9,
  M: 1e6,
  k: 1e3,
  d: 1e-1,
  c: 1e-2,
  m: 1e-3,
  u: 1e-6,
  µ: 1e-6,
  μ: 1e-6,
  n: 1e-9,
  p: 1e-12,
  f: 1e-15,
};

const unit = (factor: number, dimension: Dimension, offset?: number): Unit =>
  offset === undefined ? { factor, dimension } : { factor, dimension, offset };

const counted: Unit = { factor: 1, dimension: none, counted: true };

const length: Dimension = [1, 0, 0, 0, 0, 0];
const mass: Dimension = [0, 1, 0, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0, 0];
const perTime: Dimension = [0, 0, -1, 0, 0, 0];
const current: Dimension = [0, 0, 0, 1, 0, 0];
const temperature: Dimension = [0, 0, 0, 0, 1, 0];
const acceleration: Dimension = [1, 0, -2, 0, 0, 0];
const voltage: Dimension = [2, 1, -3, -1, 0, 0];
const angle: Dimension = [0, 0, 0, 0, 0, 1];
const turn: readonly Unit[] = [counted, unit(2 * Math.PI, angle)];

/** Units that take SI prefixes. */
const prefixable: Readonly<Record<string, readonly Unit[]>> = {
  m: [unit(1, length)],
  g: [unit(standardGravity, acceleration), unit(1e-3, mass)],
  s: [unit(1, time)],
  A: [unit(1, current)],
  K: [unit(1, temperature)],
  Hz: [unit(1, perTime)],
  V: [unit(1, voltage)],
  C: [unit(1, [0, 0, 1, 1, 0, 0]), unit(1, temperature, 273.15)],
  F: [unit(1, [-2, -1, 4, 2, 0, 0]), unit(5 / 9, temperature, 459.67 * (5 / 9))],
  H: [unit(1, [2, 1, -2, -2, 0, 0])],
  ohm: [unit(1, [2, 1, -3, -2, 0, 0])],
  '\u03a9': [unit(1, [2, 1, -3, -2, 0, 0])],
  '\u2126': [unit(1, [2, 1, -3, -2, 0, 0])],
  S: [unit(1, [-2, -1, 3, 2, 0, 0])],
  W: [unit(1, [2, 1, -3, 0, 0, 0])],
  N: [unit(1, [1, 1, -2, 0, 0, 0])],
  J: [unit(1, [2, 1, -2, 0, 0, 0])],
  Pa: [unit(1, [-1, 1, -2, 0, 0, 0])],
  bar: [unit(1e5, [-1, 1, -2, 0, 0, 0])],
  T: [unit(1, [0, 1, -2, -1, 0, 0])],
  L: [unit(1e-3, [3, 0, 0, 0, 0, 0])],
  l: [unit(1e-3, [3, 0, 0, 0, 0, 0])],
  rtHz: [unit(1, [0, 0, -0.5, 0, 0, 0])],
  rad: [unit(1, angle)],
};

/** Units that stand as they are. */
const plain: Readonly<Record<string, readonly Unit[]>> = {
  '%': [unit(0.01, none)],
  ppm: [unit(1e-6, none)],
  counts: [counted],
  count: [counted],
  deg: [unit(Math.PI / 180, angle)],
  '°': [unit(Math.PI / 180, angle)],
  r: turn,
  rev: turn,
  turns: turn,
  turn,
  rpm: [unit(1 / 60, perTime)],
  RPM: [unit(1 / 60, perTime)],
  cpm: [unit(1 / 60, perTime)],
  CPM: [unit(1 / 60, perTime)],
  min: [unit(60, time)],
  h: [unit(3600, time)],
  d: [unit(86_400, time)],
  day: [unit(86_400, time)],
  days: [unit(86_400, time)],
  week: [unit(604_800, time)],
  weeks: [unit(604_800, time)],
  // Of 365.25 days: what is stated in years is not known to a day.
  year: [unit(31_557_600, time)],
  years: [unit(31_557_600, time)],
  in: [unit(inch, length)],
  mil: [unit(inch / 1000, length)],
  mils: [unit(inch / 1000, length)],
  ft: [unit(12 * inch, length)],
  ips: [unit(inch, [1, 0, -1, 0, 0, 0])],
  kg: [unit(1, mass)],
  lb: [unit(0.453_592_37, mass)],
  oz: [unit(0.028_349_523_125, mass)],
  gn: [unit(standardGravity, acceleration)],
  '°C': [unit(1, temperature, 273.15)],
  degC: [unit(1, temperature, 273.15)],
  '°F': [unit(5 / 9, temperature, 459.67 * (5 / 9))],
  degF: [unit(5 / 9, temperature, 459.67 * (5 / 9))],
  hp: [unit(745.699_871_582_270_2, [2, 1, -3, 0, 0, 0])],
  lbf: [unit(4.448_221_615_260_5, [1, 1, -2, 0, 0, 0])],
  psi: [unit(6894.757_293_168, [-1, 1, -2, 0, 0, 0])],
  atm: [unit(101_325, [-1, 1, -2, 0, 0, 0])],
  Torr: [unit(101_325 / 760, [-1, 1, -2, 0, 0, 0])],
};

const plainUnits = new Map(Object.entries(plain));
const prefixableUnits = new Map(Object.entries(prefixable));
const prefixFactors = new Map(Object.entries(prefixes));

/**
 * Every meaning a symbol may have. `g` is the standard gravity before the gram, `C` and `F` are coulomb and farad
 * before the temperatures: the reader keeps the meaning whose dimension is the one expected.
 */
export function unitsCalled(symbol: string): readonly Unit[] {
  const asItStands = plainUnits.get(symbol);
  const meanings = [...(asItStands ?? []), ...(prefixableUnits.get(symbol) ?? [])];
  const prefix = prefixFactors.get(symbol.slice(0, 1));
  if (prefix === undefined || asItStands !== undefined) return meanings;
  for (const meaning of prefixableUnits.get(symbol.slice(1)) ?? []) {
    if (meaning.offset === undefined) meanings.push(unit(meaning.factor * prefix, meaning.dimension));
  }
  return meanings;
}

/** Every symbol that is read, with and without prefix: for suggestions. */
export const knownUnitSymbols: readonly string[] = [
  ...plainUnits.keys(),
  ...prefixableUnits.keys(),
  ...[...prefixFactors.keys()].flatMap((prefix) => [...prefixableUnits.keys()].map((symbol) => prefix + symbol)),
];
