import { type Detector, sineFactor } from './detector.ts';
import { type Motion, motionOrder, type QuantityName } from './quantities.ts';
import { Broken, Refusal } from './refusal.ts';

/** Frequencies from low to high, in hertz. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** An amplitude: never without its quantity and detector, and with its band where one was stated. SI value. */
export interface Level<Name extends QuantityName = QuantityName> {
  readonly quantity: Name;
  readonly value: number;
  readonly detector: Detector;
  readonly band?: Band;
}

export function level<Name extends QuantityName>(
  quantity: Name,
  value: number,
  detector: Detector,
  band?: Band,
): Level<Name> {
  return band === undefined ? { quantity, value, detector } : { quantity, value, detector, band };
}

/**
 * The level another detector would read, for a single sine only: x_to = x · k_to/k_from with k = 1 (rms), √2 (peak),
 * 2√2 (peak-to-peak), 2√2/π (average).
 */
export function asSineDetector<Name extends QuantityName>(from: Level<Name>, to: Detector): Level<Name> {
  const value = (from.value * sineFactor[to]) / sineFactor[from.detector];
  return level(from.quantity, value, to, from.band);
}

/**
 * The same single-frequency motion as another motion quantity: multiply by 2πf, f in hertz and above zero, for each
 * differentiation. Throws Broken at rest, where a displacement cannot be told from an acceleration.
 */
export function asMotion<To extends Motion>(from: Level<Motion>, to: To, frequency: number): Level<To> {
  const order = motionOrder[to] - motionOrder[from.quantity];
  if (order !== 0 && !(frequency > 0)) throw new Broken('motion is converted at a frequency above zero', { frequency });
  return level(to, from.value * (2 * Math.PI * frequency) ** order, from.detector, from.band);
}

/** Refuses to compare levels of unlike quantity, detector or band, in a sentence that names both. */
export function comparable(a: Level, b: Level): void {
  const differences: string[] = [];
  if (a.quantity !== b.quantity) differences.push(`quantities (${a.quantity} and ${b.quantity})`);
  if (a.detector !== b.detector) differences.push(`detectors (${a.detector} and ${b.detector})`);
  if (a.band?.low !== b.band?.low || a.band?.high !== b.band?.high) {
    differences.push(`bands (${bandText(a.band)} and ${bandText(b.band)})`);
  }
  if (differences.length === 0) return;
  throw new Refusal({
    read: `a ${a.detector} ${a.quantity} beside a ${b.detector} ${b.quantity}`,
    expected: 'two levels of one quantity, detector and band',
    suggestion: `They have different ${differences.join(', ')}; convert one of them first, and say for which waveform.`,
  });
}

function bandText(band: Band | undefined): string {
  return band === undefined ? 'no band stated' : `${band.low}..${band.high} Hz`;
}
