/** What a model may compute, with the slope that carries uncertainty through it. */
export interface Unary {
  readonly name: string;
  value(x: number): number;
  /** d value/dx; not a finite number where there is none. */
  slope(x: number): number;
}

export interface Binary {
  readonly name: string;
  value(a: number, b: number): number;
  /** Partial derivatives with respect to a and b; not finite numbers where there are none. */
  slopes(a: number, b: number): readonly [number, number];
}

const none = Number.NaN;

export const sum: Binary = { name: '+', value: (a, b) => a + b, slopes: () => [1, 1] };
export const difference: Binary = { name: '−', value: (a, b) => a - b, slopes: () => [1, -1] };
export const product: Binary = { name: '*', value: (a, b) => a * b, slopes: (a, b) => [b, a] };
export const quotient: Binary = { name: '/', value: (a, b) => a / b, slopes: (a, b) => [1 / b, -a / b / b] };
export const power: Binary = {
  name: '^',
  value: (a, b) => a ** b,
  slopes: (a, b) => [b === 0 ? 0 : b * a ** (b - 1), a > 0 ? a ** b * Math.log(a) : a === 0 && b > 0 ? 0 : none],
};
export const negative: Unary = { name: '−', value: (x) => -x, slope: () => -1 };

/** Functions of one argument that a model may name; angles in radians, `log` and `ln` to the base e. */
export const unaryFunctions: readonly Unary[] = [
  { name: 'sqrt', value: Math.sqrt, slope: (x) => 0.5 / Math.sqrt(x) },
  { name: 'sin', value: Math.sin, slope: Math.cos },
  { name: 'cos', value: Math.cos, slope: (x) => -Math.sin(x) },
  { name: 'tan', value: Math.tan, slope: (x) => 1 + Math.tan(x) ** 2 },
  { name: 'asin', value: Math.asin, slope: (x) => 1 / Math.sqrt(1 - x * x) },
  { name: 'acos', value: Math.acos, slope: (x) => -1 / Math.sqrt(1 - x * x) },
  { name: 'atan', value: Math.atan, slope: (x) => 1 / (1 + x * x) },
  { name: 'exp', value: Math.exp, slope: Math.exp },
  { name: 'log', value: Math.log, slope: (x) => 1 / x },
  { name: 'ln', value: Math.log, slope: (x) => 1 / x },
  { name: 'log10', value: Math.log10, slope: (x) => 1 / (x * Math.LN10) },
  { name: 'abs', value: Math.abs, slope: (x) => (x > 0 ? 1 : x < 0 ? -1 : none) },
];

/** Functions of two or more arguments, taken pair by pair. Where two arguments meet there is no slope. */
export const binaryFunctions: readonly Binary[] = [
  { name: 'min', value: Math.min, slopes: (a, b) => (a < b ? [1, 0] : a > b ? [0, 1] : [none, none]) },
  { name: 'max', value: Math.max, slopes: (a, b) => (a > b ? [1, 0] : a < b ? [0, 1] : [none, none]) },
];

/** The two ways of computing a model: with plain numbers at each trial, and with uncertain quantities. */
export interface Arithmetic<T> {
  constant(value: number): T;
  unary(operation: Unary, x: T): T;
  binary(operation: Binary, a: T, b: T): T;
}

export const numberArithmetic: Arithmetic<number> = {
  constant: (value) => value,
  unary: (operation, x) => operation.value(x),
  binary: (operation, a, b) => operation.value(a, b),
};
