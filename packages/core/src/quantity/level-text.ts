import { type Detector, shortDetector, splitAtDetector } from './detector.ts';
import { type Showing, showBand, showNumber, spelledUnit } from './format.ts';
import { type Band, type Level, level } from './level.ts';
import { leadingNumber, pointDecimals, valueText, type Writing, withinReach } from './number.ts';
import { article, inUnit } from './parse.ts';
import { type QuantityName, quantities } from './quantities.ts';
import { Refusal, shortened } from './refusal.ts';
import { parseBand } from './span.ts';
import { meaningFor, unitFor } from './unit-expression.ts';
import { unitSuggestion } from './unit-suggestion.ts';

/**
 * How a level is written: its unit, and its detector. For a level in decibels the unit is `dB`, and `reference` is the
 * SI value of 0 dB.
 */
export interface LevelWriting<Name extends QuantityName = QuantityName> {
  readonly quantity: Name;
  readonly unit: string;
  readonly detector: Detector;
  readonly reference?: { readonly value: number; readonly written: string };
}

/**
 * Reads `4.5 mm/s rms`, `80 um pp`, `4.5 mm/s rms 10-1000 Hz`, `120 dB re 1 um/s2 rms`: an amplitude of one of the
 * named quantities with its detector, and its band where one is written. Throws Refusal.
 */
export function parseLevel<Name extends QuantityName>(
  text: string,
  names: readonly Name[],
  writing: Writing = pointDecimals,
): Level<Name> {
  const expected = expectedLevel(names);
  const { value, rest } = leadingNumber(text, expected, writing);
  const { written, band } = writingAndBand(rest, names, text, expected, writing);
  if (written.reference !== undefined) {
    const read = withinReach(written.reference.value * 10 ** (value / 20), text, expected);
    return level(written.quantity, read, written.detector, band);
  }
  if (value < 0) throw new Refusal({ read: text, expected, suggestion: 'An amplitude is not negative.' });
  return level(written.quantity, inUnit(value, written.unit, written.quantity, text), written.detector, band);
}

/** Reads how a level shall be written, without a number: `mm/s rms`, `um pp`, `dB re 1 um/s2 rms`. Throws Refusal. */
export function parseLevelWriting<Name extends QuantityName>(
  text: string,
  names: readonly Name[],
  writing: Writing = pointDecimals,
): LevelWriting<Name> {
  const expected = `a unit of ${names.join(', ')} with a detector, such as 'mm/s rms' or 'dB re 1 um/s2 rms'`;
  const plain = valueText(text, expected);
  if (/^[+-]?[\d.,]+\s/.test(plain)) {
    throw new Refusal({ read: text, expected, suggestion: 'Only the unit and the detector are asked for here.' });
  }
  const { written, band } = writingAndBand(plain, names, text, expected, writing);
  if (band === undefined) return written;
  throw new Refusal({ read: text, expected, suggestion: 'The band belongs to the level itself.' });
}

/** The number of a level in the unit asked for: 81.03 of `µm pp`, 133.06 of `dB re 1 nm/s rms`. */
export function levelIn(shown: Level, written: LevelWriting): number {
  if (written.reference !== undefined) return 20 * Math.log10(shown.value / written.reference.value);
  return shown.value / unitFor(written.unit, written.quantity).factor;
}

/** A level in the unit asked for, as text that reads back. The detector is the level's own: nothing is converted. */
export function showLevelIn(shown: Level, written: LevelWriting, showing: Showing = {}): string {
  const unit = written.reference === undefined ? spelledUnit(written.unit) : `dB re ${written.reference.written}`;
  const band = shown.band === undefined ? '' : ` ${showBand(shown.band, showing)}`;
  const number = showNumber(levelIn(shown, written), showing.digits, showing.decimal);
  return `${number} ${unit} ${shortDetector[shown.detector]}${band}`;
}

function expectedLevel(names: readonly QuantityName[]): string {
  const units = names.map((name) => `${article(name)} in ${quantities[name].metric.join(', ')}`).join(' or ');
  return `${units}, with its detector (rms, peak, pp)`;
}

function writingAndBand<Name extends QuantityName>(
  text: string,
  names: readonly Name[],
  whole: string,
  expected: string,
  writing: Writing,
): { readonly written: LevelWriting<Name>; readonly band: Band | undefined } {
  const { before, detector, after } = splitAtDetector(text);
  const unit = before.trim();
  if (detector === undefined) {
    const detectorless = 'The detector is missing: the same sine is 1 rms, 1.414 peak or 2.828 peak-to-peak.';
    throw new Refusal({
      read: whole,
      expected,
      suggestion: /^V?dB$/i.test(unit) ? `${withReference} ${detectorless}` : detectorless,
    });
  }
  const another = splitAtDetector(after).detector;
  if (another !== undefined) {
    throw new Refusal({ read: whole, expected, suggestion: `It names two detectors, ${detector} and ${another}.` });
  }
  const band = bandAfter(after, whole, writing);
  if (/^V?dB/i.test(unit)) return { written: inDecibels(unit, names, detector, whole, expected, writing), band };
  if (unit === '') {
    throw new Refusal({ read: whole, expected, suggestion: 'The unit is missing; none is ever assumed.' });
  }
  const quantity = names.find((name) => meaningFor(unit, name) !== undefined);
  if (quantity === undefined) throw new Refusal({ read: whole, expected, suggestion: unitSuggestion(unit, names) });
  return { written: { quantity, unit, detector }, band };
}

const withReference =
  "A level in dB needs its reference: 'dB re 1 um/s2', 'dB re 1 nm/s' or 'dB re 1 pm' (ISO 1683); 1e-6 in/s and 5e-8 m/s are in use too.";

/** A level in decibels: x = x₀ · 10^(L/20). The reference is always written out. Source: ISO 1683 (from memory). */
function inDecibels<Name extends QuantityName>(
  unit: string,
  names: readonly Name[],
  detector: Detector,
  whole: string,
  expected: string,
  writing: Writing,
): LevelWriting<Name> {
  const written = /^dB\s+re\.?\s+(\S.*)$/s.exec(unit)?.[1];
  if (written === undefined) {
    throw new Refusal({
      read: whole,
      expected,
      suggestion: withReference,
    });
  }
  const { value, rest } = leadingNumber(written, expected, writing);
  const quantity = names.find((name) => meaningFor(rest, name) !== undefined);
  if (quantity === undefined) throw new Refusal({ read: whole, expected, suggestion: unitSuggestion(rest, names) });
  if (!(value > 0)) {
    throw new Refusal({
      read: whole,
      expected,
      suggestion: `The reference '${shortened(written)}' is not above zero.`,
    });
  }
  const reference = { value: inUnit(value, rest, quantity, whole), written };
  return { quantity, unit: 'dB', detector, reference };
}

function bandAfter(text: string, whole: string, writing: Writing): Band | undefined {
  const trimmed = text
    .replace(/^[\s,;(]*/, '')
    .replace(/^in\s+/, '')
    .replace(/[)\s]+$/, '');
  return trimmed === '' ? undefined : parseBand(trimmed, whole, writing);
}
