import { splitAtDetector } from './detector.ts';
import { type Dimension, sameDimension } from './dimension.ts';
import { type Band, type Level, level } from './level.ts';
import { type Quantity, type QuantityName, quantities } from './quantities.ts';
import { Refusal, shortened } from './refusal.ts';
import { meaningsOf, nearestUnit } from './unit-expression.ts';

/** How numbers are written in the text being read. */
export interface Writing {
  readonly decimal: 'point' | 'comma';
}
export const pointDecimals: Writing = { decimal: 'point' };

const longestText = 400;

/** Splits text into its leading number and the rest, refusing a decimal comma where none is declared. */
function leadingNumber(text: string, expected: string, writing: Writing): { value: number; rest: string } {
  const trimmed = text
    .normalize('NFC')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .trim();
  if (trimmed.length > longestText) {
    throw new Refusal({ read: trimmed, expected, suggestion: `A value is shorter than ${longestText} characters.` });
  }
  const match = /^([+\-\u2212]?)(\d[\d.,]*|[.,]\d+)(?:[eE]([+\-\u2212]?\d{1,3})(?![\p{L}\d]))?/u.exec(trimmed);
  if (match === null) throw new Refusal({ read: trimmed, expected });
  const digits = match[2]!;
  const separator = writing.decimal === 'comma' ? ',' : '.';
  const other = writing.decimal === 'comma' ? '.' : ',';
  if (digits.includes(other) || digits.split(separator).length > 2) {
    throw new Refusal({
      read: trimmed,
      expected,
      suggestion:
        writing.decimal === 'comma'
          ? "This file declares comma decimals: write '3,5', and no separator between thousands."
          : "Write '3.5', and no separator between thousands; a decimal comma is read only where the file declares 'decimals: comma'.",
    });
  }
  const sign = match[1] === '-' || match[1] === '\u2212' ? -1 : 1;
  const exponent = match[3] === undefined ? '' : `e${match[3].replace('\u2212', '-')}`;
  const value = sign * Number(digits.replace(',', '.') + exponent);
  if (!Number.isFinite(value)) throw new Refusal({ read: trimmed, expected, suggestion: 'The number is too large.' });
  return { value, rest: trimmed.slice(match[0].length).trim() };
}

function inUnit(value: number, unitText: string, name: QuantityName, whole: string): number {
  const { dimension } = quantities[name];
  const expected = expectedQuantity(name);
  if (unitText === '') {
    if (name === 'ratio' || name === 'count') return value;
    throw new Refusal({ read: whole, expected, suggestion: `The number ${value} has no unit; none is ever assumed.` });
  }
  const meanings = meaningsOf(unitText);
  const meaning = meanings.find((candidate) => sameDimension(candidate.dimension, dimension));
  if (meaning === undefined) throw new Refusal({ read: whole, expected, ...unitSuggestion(unitText, meanings, name) });
  const affine = meaning.offset !== undefined && name === 'temperature';
  return affine ? value * meaning.factor + meaning.offset! : value * meaning.factor;
}

function unitSuggestion(unitText: string, meanings: readonly { dimension: Dimension }[], name: QuantityName) {
  const [first] = meanings;
  if (first !== undefined) {
    return { suggestion: `'${unitText}' is a unit of ${quantityWith(first.dimension)}, and ${name} is asked for.` };
  }
  const near = nearestUnit(unitText);
  const known = near === undefined ? '' : ` Did you mean '${near}'?`;
  return { suggestion: `'${shortened(unitText, 30)}' is not a unit known here.${known}` };
}

function quantityWith(dimension: Dimension): string {
  const names = Object.entries(quantities)
    .filter(([, definition]) => sameDimension(definition.dimension, dimension))
    .map(([name]) => name);
  return names.length === 0 ? 'no quantity used here' : names.slice(0, 2).join(' or ');
}

export function expectedQuantity(name: QuantityName): string {
  const definition = quantities[name];
  const units = definition.metric[0] === '1' ? 'a plain number' : `in ${definition.metric.join(', ')} or the like`;
  return `a ${name} ${units}`;
}

/** Reads `24.8 Hz`, `1486 r/min`, `100 mV/g`: a number with a unit of the named quantity. Throws Refusal. */
export function parseQuantity<Name extends QuantityName>(
  text: string,
  name: Name,
  writing: Writing = pointDecimals,
): Quantity<Name> {
  const { value, rest } = leadingNumber(text, expectedQuantity(name), writing);
  if ((name === 'ratio' || name === 'fraction') && rest === 'dB') return (10 ** (value / 20)) as Quantity<Name>;
  const { before, detector } = splitAtDetector(rest);
  if (detector !== undefined && meaningsOf(before.trim()).length > 0) {
    throw new Refusal({
      read: text,
      expected: expectedQuantity(name),
      suggestion: `It carries the detector ${detector}; a ${name} has none. An amplitude belongs elsewhere.`,
    });
  }
  return inUnit(value, rest, name, text) as Quantity<Name>;
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
  const expected = `${names.map((name) => `${article(name)} in ${quantities[name].metric.join(', ')}`).join(' or ')}, with its detector (rms, peak, pp)`;
  const { value, rest } = leadingNumber(text, expected, writing);
  const { before, detector, after } = splitAtDetector(rest);
  if (detector === undefined) {
    throw new Refusal({
      read: text,
      expected,
      suggestion: 'The detector is missing: the same motion is 1 rms, 1.414 peak or 2.828 peak-to-peak.',
    });
  }
  const band = bandAfter(after, text, writing);
  const decibel = /^dB\b\s*(?:re\.?)?\s*(.*)$/s.exec(before.trim());
  if (decibel !== null) return levelAbove(decibel[1]!.trim(), value, text, names, writing, detector, band, expected);
  if (value < 0) throw new Refusal({ read: text, expected, suggestion: 'An amplitude is not negative.' });
  const unitText = before.trim();
  const name = names.find((candidate) =>
    meaningsOf(unitText).some((meaning) => sameDimension(meaning.dimension, quantities[candidate].dimension)),
  );
  const read = inUnit(value, unitText, name ?? names[0]!, text);
  return level(name ?? names[0]!, read, detector, band);
}

/** A level in decibels: x = x₀ · 10^(L/20). The reference is always written out. Source: ISO 1683 (from memory). */
function levelAbove<Name extends QuantityName>(
  reference: string,
  decibels: number,
  text: string,
  names: readonly Name[],
  writing: Writing,
  detector: Level['detector'],
  band: Band | undefined,
  expected: string,
): Level<Name> {
  if (reference === '') {
    throw new Refusal({
      read: text,
      expected,
      suggestion: "A level in dB needs its reference: 'dB re 1 um/s2' (ISO 1683), 'dB re 1 nm/s', 'dB re 1 pm'.",
    });
  }
  const { value, rest } = leadingNumber(reference, expected, writing);
  const name = names.find((candidate) =>
    meaningsOf(rest).some((meaning) => sameDimension(meaning.dimension, quantities[candidate].dimension)),
  );
  const zero = inUnit(value, rest, name ?? names[0]!, text);
  return level(name ?? names[0]!, zero * 10 ** (decibels / 20), detector, band);
}

function bandAfter(text: string, whole: string, writing: Writing): Band | undefined {
  const trimmed = text.replace(/^[\s,;(in]*/, '').replace(/[)\s]+$/, '');
  return trimmed === '' ? undefined : parseBand(trimmed, whole, writing);
}

/** Reads `10-1000 Hz`, `2..10 kHz`, `10 Hz to 1 kHz`. */
export function parseBand(text: string, whole: string = text, writing: Writing = pointDecimals): Band {
  const span = parseSpan(text, 'frequency', writing, whole);
  return { low: span.low, high: span.high };
}

/** From low to high of one quantity. */
export interface Span<Name extends QuantityName = QuantityName> {
  readonly low: Quantity<Name>;
  readonly high: Quantity<Name>;
}

/** Reads `25..50 Hz`, `-50..120 °C`, `10-14 V`, `0.5 Hz to 1 kHz`; a single value is a span of no width. */
export function parseSpan<Name extends QuantityName>(
  text: string,
  name: Name,
  writing: Writing = pointDecimals,
  whole: string = text,
): Span<Name> {
  const expected = `${expectedQuantity(name)}, from low to high ('10..14 …')`;
  const split = /^(.+?)\s*(?:\.\.\.?|…|\bto\b|(?<=[\d\p{L}%°)])\s*[-–]\s*(?=\d))\s*(.+)$/su.exec(text.trim());
  if (split === null) {
    const single = parseQuantity(text, name, writing);
    return { low: single, high: single };
  }
  const [, left, right] = split;
  const high = parseQuantity(right!, name, writing);
  const unitOfHigh = right!.trim().replace(/^[+\-\u2212]?[\d.,]+(?:[eE][+-]?\d+)?\s*/, '');
  const low = /^[+\-\u2212]?[\d.,]+(?:[eE][+-]?\d+)?$/.test(left!.trim())
    ? parseQuantity(`${left} ${unitOfHigh}`, name, writing)
    : parseQuantity(left!, name, writing);
  if (low > high) {
    throw new Refusal({ read: whole, expected, suggestion: 'The first value is the larger one; are they exchanged?' });
  }
  return { low, high };
}

/** How far a reading may lie from the truth, as fractions: low is negative. */
export interface Tolerance {
  readonly low: number;
  readonly high: number;
}

/** Reads `±10 %`, `+41/-29.3 %`, `±3 dB`. Throws Refusal. */
export function parseTolerance(text: string, writing: Writing = pointDecimals): Tolerance {
  const expected = "a tolerance such as '±10 %', '+41/-29 %' or '±3 dB'";
  const match =
    /^\s*(?:±|\+\/?-|\+\/−)\s*([\d.,]+)\s*(%|dB)\s*$|^\s*\+\s*([\d.,]+)\s*%?\s*\/\s*[-−]\s*([\d.,]+)\s*%\s*$/.exec(
      text,
    );
  if (match === null) throw new Refusal({ read: text, expected });
  const number = (digits: string) => leadingNumber(digits, expected, writing).value;
  if (match[2] === 'dB') {
    const ratio = 10 ** (number(match[1]!) / 20);
    return { low: 1 / ratio - 1, high: ratio - 1 };
  }
  if (match[1] !== undefined) return { low: -number(match[1]) / 100, high: number(match[1]) / 100 };
  return { low: -number(match[4]!) / 100, high: number(match[3]!) / 100 };
}

function article(name: string): string {
  return /^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`;
}
