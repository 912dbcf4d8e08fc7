import type { Dimension } from './dimension.ts';

/** How a quantity is computed (coherent SI), and the units it is usually shown in, largest that fits first to last. */
export interface QuantityDefinition {
  readonly unit: string;
  readonly dimension: Dimension;
  readonly metric: readonly string[];
  readonly us: readonly string[];
  /** Shown in these where it is as large as that; nobody is asked to type in them. */
  readonly beyond?: readonly string[];
  /** A value below zero has no meaning: it is refused where it is read. */
  readonly neverNegative?: true;
}

const quantity = (unit: string, dimension: Dimension, metric: string, us = metric): QuantityDefinition => ({
  unit,
  dimension,
  metric: metric.split(' '),
  us: us.split(' '),
});

const magnitude = (unit: string, dimension: Dimension, metric: string, us = metric): QuantityDefinition => ({
  ...quantity(unit, dimension, metric, us),
  neverNegative: true,
});

/**
 * The quantities of the trade. A name says what is meant; the dimension alone does not, since a shaft speed and a
 * frequency, or a gain and a tolerance, share one. Units of one quantity are listed small to large.
 */
export const quantities = {
  frequency: { ...magnitude('Hz', [0, 0, -1, 0, 0, 0], 'Hz'), beyond: ['MHz'] },
  'shaft speed': quantity('Hz', [0, 0, -1, 0, 0, 0], 'r/min', 'r/min'),
  acceleration: quantity('m/s2', [1, 0, -2, 0, 0, 0], 'ug mg g', 'ug mg g'),
  velocity: quantity('m/s', [1, 0, -1, 0, 0, 0], 'mm/s', 'in/s'),
  displacement: quantity('m', [1, 0, 0, 0, 0, 0], 'um', 'mil'),
  length: quantity('m', [1, 0, 0, 0, 0, 0], 'um mm m', 'mil in ft'),
  mass: magnitude('kg', [0, 1, 0, 0, 0, 0], 'g kg', 'oz lb'),
  time: quantity('s', [0, 0, 1, 0, 0, 0], 'us ms s'),
  duration: quantity('s', [0, 0, 1, 0, 0, 0], 's h days'),
  temperature: quantity('K', [0, 0, 0, 0, 1, 0], '°C', '°F'),
  'temperature difference': quantity('K', [0, 0, 0, 0, 1, 0], 'K'),
  voltage: quantity('V', [2, 1, -3, -1, 0, 0], 'uV mV V'),
  current: quantity('A', [0, 0, 0, 1, 0, 0], 'uA mA A'),
  charge: quantity('C', [0, 0, 1, 1, 0, 0], 'pC nC'),
  resistance: magnitude('ohm', [2, 1, -3, -2, 0, 0], 'mohm ohm kohm Mohm Gohm'),
  capacitance: magnitude('F', [-2, -1, 4, 2, 0, 0], 'pF nF uF'),
  inductance: magnitude('H', [2, 1, -2, -2, 0, 0], 'uH mH H'),
  power: quantity('W', [2, 1, -3, 0, 0, 0], 'mW W kW MW', 'mW W hp'),
  torque: quantity('N*m', [2, 1, -2, 0, 0, 0], 'N*m'),
  stiffness: magnitude('N/m', [0, 1, -2, 0, 0, 0], 'N/m'),
  force: quantity('N', [1, 1, -2, 0, 0, 0], 'N kN'),
  'elastic modulus': magnitude('Pa', [-1, 1, -2, 0, 0, 0], 'GPa'),
  density: magnitude('kg/m3', [-3, 1, 0, 0, 0, 0], 'kg/m3'),
  angle: quantity('rad', [0, 0, 0, 0, 0, 1], 'deg'),
  ratio: quantity('1', [0, 0, 0, 0, 0, 0], '1'),
  fraction: quantity('1', [0, 0, 0, 0, 0, 0], '%'),
  'voltage per acceleration': quantity('V/(m/s2)', [1, 1, -1, -1, 0, 0], 'mV/g', 'mV/g'),
  'voltage per velocity': quantity('V/(m/s)', [1, 1, -2, -1, 0, 0], 'mV/(mm/s)', 'mV/(in/s)'),
  'voltage per displacement': quantity('V/m', [1, 1, -3, -1, 0, 0], 'mV/um', 'mV/mil'),
  'charge per acceleration': quantity('C/(m/s2)', [-1, 0, 3, 1, 0, 0], 'pC/g', 'pC/g'),
  'acceleration density': magnitude('(m/s2)/rtHz', [1, 0, -1.5, 0, 0, 0], 'ug/rtHz', 'ug/rtHz'),
  'velocity density': magnitude('(m/s)/rtHz', [1, 0, -0.5, 0, 0, 0], '(um/s)/rtHz', '(um/s)/rtHz'),
  'displacement density': magnitude('m/rtHz', [1, 0, 0.5, 0, 0, 0], 'nm/rtHz'),
  'voltage density': magnitude('V/rtHz', [2, 1, -2.5, -1, 0, 0], 'nV/rtHz uV/rtHz'),
  'capacitance per length': magnitude('F/m', [-3, -1, 4, 2, 0, 0], 'pF/m', 'pF/ft'),
  'inductance per length': magnitude('H/m', [1, 1, -2, -2, 0, 0], 'uH/m', 'uH/ft'),
  'inductance per resistance': magnitude('H/ohm', [0, 0, 1, 0, 0, 0], 'uH/ohm'),
  'resistance per length': magnitude('ohm/m', [1, 1, -3, -2, 0, 0], 'ohm/km', 'ohm/ft'),
  'per temperature': quantity('1/K', [0, 0, 0, 0, -1, 0], '%/K', '%/K'),
  count: quantity('1', [0, 0, 0, 0, 0, 0], '1'),
} as const satisfies Readonly<Record<string, QuantityDefinition>>;

export type QuantityName = keyof typeof quantities;

declare const brand: unique symbol;

/** A number in the coherent SI unit of the named quantity. */
export type Quantity<Name extends QuantityName> = number & { readonly [brand]: Name };

/** Gives a computed SI number its quantity. The only way, beside reading text, to make one. */
export function si<Name extends QuantityName>(_name: Name, value: number): Quantity<Name> {
  return value as Quantity<Name>;
}

export type Frequency = Quantity<'frequency'>;
export type Temperature = Quantity<'temperature'>;
export type Voltage = Quantity<'voltage'>;
export type Current = Quantity<'current'>;
export type Resistance = Quantity<'resistance'>;
export type Capacitance = Quantity<'capacitance'>;
export type Time = Quantity<'time'>;
export type Length = Quantity<'length'>;

/** The three motions a machine is judged by. */
export type Motion = 'acceleration' | 'velocity' | 'displacement';
export const motions: readonly Motion[] = ['displacement', 'velocity', 'acceleration'];

/** How often the motion is differentiated from displacement: the power of 2πf between two of them. */
export const motionOrder: Readonly<Record<Motion, number>> = { displacement: 0, velocity: 1, acceleration: 2 };
