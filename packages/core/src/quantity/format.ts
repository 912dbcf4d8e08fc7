import { type Detector, shortDetector } from './detector.ts';
import { asSineDetector, type Band, type Level } from './level.ts';
import { type QuantityDefinition, type QuantityName, quantities } from './quantities.ts';
import { Broken } from './refusal.ts';
import type { Span, Tolerance } from './span.ts';
import { unitFor } from './unit-expression.ts';

export type UnitSystem = 'metric' | 'us';

/** How values are shown. Four significant digits unless a place asks for others. */
export interface Showing {
  readonly units?: UnitSystem;
  readonly digits?: number;
  readonly decimal?: 'point' | 'comma';
  /** Amplitudes as this detector would read a sine of them, which is then said; as stated where absent. */
  readonly detector?: Detector;
}

const spelling: Readonly<Record<string, string>> = {
  um: 'µm',
  uV: 'µV',
  uA: 'µA',
  uF: 'µF',
  uH: 'µH',
  us: 'µs',
  ug: 'µg',
  ohm: 'Ω',
  mohm: 'mΩ',
  kohm: 'kΩ',
  Mohm: 'MΩ',
  Gohm: 'GΩ',
  'ohm/km': 'Ω/km',
  'ohm/ft': 'Ω/ft',
  'N*m': 'N·m',
  '(um/s)/rtHz': '(µm/s)/√Hz',
  'ug/rtHz': 'µg/√Hz',
  'nm/rtHz': 'nm/√Hz',
  'nV/rtHz': 'nV/√Hz',
  'uV/rtHz': 'µV/√Hz',
  'mV/um': 'mV/µm',
  'uH/m': 'µH/m',
  'uH/ft': 'µH/ft',
  'uH/ohm': 'µH/Ω',
  deg: '°',
  '1': '',
};

/** A number with significant digits and no exponent within seven decades of 1. */
export function showNumber(value: number, digits = 4, decimal: Showing['decimal'] = 'point'): string {
  if (!Number.isFinite(value)) throw new Broken('a number that is shown is finite', { value: String(value) });
  const magnitude = Math.abs(value);
  let text: string;
  if (value === 0) text = '0';
  else if (magnitude >= 1e7 || magnitude < 1e-5) text = value.toExponential(Math.max(0, digits - 1));
  else if (magnitude >= 10 ** digits - 0.5) text = value.toFixed(0);
  else text = value.toPrecision(digits);
  if (text.includes('.')) text = text.replace(/(\.\d*?)0+($|e)/, '$1$2').replace(/\.($|e)/, '$1');
  text = text.replace('-', '\u2212').replace(/e\+?(\u2212|-)?(\d+)/, (_, sign, power) => `e${sign ? '-' : ''}${power}`);
  return decimal === 'comma' ? text.replace('.', ',') : text;
}

/** The unit a value of this quantity is usually shown in: the largest in which it is at least 1 when rounded. */
export function usualUnit(name: QuantityName, value: number, system: UnitSystem = 'metric', digits = 4): string {
  const definition: QuantityDefinition = quantities[name];
  const candidates = [...definition[system], ...(definition.beyond ?? [])];
  let chosen: string = candidates[0]!;
  for (const candidate of candidates) {
    const { factor } = unitFor(chosen, name);
    const rounded = Number((Math.abs(value) / factor).toPrecision(digits)) * factor;
    if (rounded >= unitFor(candidate, name).factor * (1 - 1e-9)) chosen = candidate;
  }
  if (value === 0) chosen = nearestToOne(candidates, name);
  return chosen;
}

/** Zero has no size to choose by: the unit nearest the coherent one, so that nothing is shown as 0 GΩ. */
function nearestToOne(candidates: readonly string[], name: QuantityName): string {
  const distance = (unit: string) => Math.abs(Math.log10(unitFor(unit, name).factor));
  return candidates.reduce((best, each) => (distance(each) < distance(best) ? each : best));
}

/** The SI value expressed in a unit of its quantity. */
export function valueIn(unit: string, name: QuantityName, value: number): number {
  const { factor, offset } = unitFor(unit, name);
  return (value - (name === 'temperature' ? (offset ?? 0) : 0)) / factor;
}

/** A value with its usual unit, as text: `27000 Hz`, `8.5 nF`, `65 °C`. */
export function showQuantity(name: QuantityName, value: number, showing: Showing = {}): string {
  const unit = usualUnit(name, value, showing.units, showing.digits);
  return withUnit(showNumber(valueIn(unit, name, value), showing.digits, showing.decimal), unit);
}

/**
 * A length that must not be exceeded, as text: in whole metres, or feet, rounded down and never to the nearest. What the
 * rounding of binary numbers took from a whole number is given back.
 */
export function showLengthDown(length: number, showing: Showing = {}): string {
  const unit = showing.units === 'us' ? 'ft' : 'm';
  const whole = Math.floor(valueIn(unit, 'length', length) * (1 + 1e-12));
  return withUnit(showNumber(whole, 7, showing.decimal), unit);
}

/** A value in a stated unit, as text. */
export function showIn(unit: string, name: QuantityName, value: number, showing: Showing = {}): string {
  return withUnit(showNumber(valueIn(unit, name, value), showing.digits, showing.decimal), unit);
}

function withUnit(number: string, unit: string): string {
  const spelled = spelledUnit(unit);
  return spelled === '' ? number : spelled === '°' ? `${number}°` : `${number} ${spelled}`;
}

export function spelledUnit(unit: string): string {
  return spelling[unit] ?? unit;
}

/** An amplitude with its detector. Where another one is asked for, the text says that it is that of a sine. */
export function showLevel(stated: Level, showing: Showing = {}): string {
  const other = showing.detector !== undefined && showing.detector !== stated.detector;
  const shown = other ? asSineDetector(stated, showing.detector) : stated;
  const band = shown.band === undefined ? '' : ` ${showBand(shown.band, showing)}`;
  return `${showQuantity(shown.quantity, shown.value, showing)} ${shortDetector[shown.detector]}${other ? ' of a sine' : ''}${band}`;
}

export function showBand(band: Band, showing: Showing = {}): string {
  const low = showNumber(band.low, showing.digits, showing.decimal);
  return `${low}..${showNumber(band.high, showing.digits, showing.decimal)} Hz`;
}

export function showSpan(name: QuantityName, span: Span, showing: Showing = {}): string {
  if (span.low === span.high) return showQuantity(name, span.low, showing);
  const unit = usualUnit(name, Math.max(Math.abs(span.low), Math.abs(span.high)), showing.units, showing.digits);
  const low = showNumber(valueIn(unit, name, span.low), showing.digits, showing.decimal);
  return `${low}..${showIn(unit, name, span.high, showing)}`;
}

export function showPercent(fraction: number, digits = 3, decimal: Showing['decimal'] = 'point'): string {
  const text = showNumber(fraction * 100, digits, decimal);
  return `${fraction > 0 ? '+' : ''}${text} %`;
}

export function showTolerance(tolerance: Tolerance, showing: Showing = {}): string {
  const high = showNumber(tolerance.high * 100, 3, showing.decimal);
  const low = showNumber(-tolerance.low * 100, 3, showing.decimal);
  return high === low ? `±${high} %` : `+${high}/\u2212${low} %`;
}

export function showDecibels(ratioOrDecibels: number, digits = 1, decimal: Showing['decimal'] = 'point'): string {
  const text = `${ratioOrDecibels < 0 ? '\u2212' : ''}${Math.abs(ratioOrDecibels).toFixed(digits)} dB`;
  return decimal === 'comma' ? text.replace('.', ',') : text;
}
