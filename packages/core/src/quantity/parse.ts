import { splitAtDetector } from './detector.ts';
import { leadingNumber, pointDecimals, type Writing, withinReach } from './number.ts';
import { type Quantity, type QuantityName, quantities } from './quantities.ts';
import { Refusal } from './refusal.ts';
import { meaningFor, meaningsOf } from './unit-expression.ts';
import { unitSuggestion } from './unit-suggestion.ts';

export type { Writing };

/** The SI value of a number in a written unit of the named quantity. Throws Refusal. */
export function inUnit(value: number, unitText: string, name: QuantityName, whole: string): number {
  const expected = expectedQuantity(name);
  if (unitText === '') {
    if (name === 'ratio' || name === 'count') return value;
    throw new Refusal({ read: whole, expected, suggestion: `The number ${value} has no unit; none is ever assumed.` });
  }
  const meaning = /^\d/.test(unitText) && !/^1\s*\//.test(unitText) ? undefined : meaningFor(unitText, name);
  if (meaning === undefined) throw new Refusal({ read: whole, expected, suggestion: unitSuggestion(unitText, [name]) });
  const offset = name === 'temperature' ? (meaning.offset ?? 0) : 0;
  const read = withinReach(value * meaning.factor + offset, whole, expected);
  if (name === 'temperature' && read < 0) {
    throw new Refusal({ read: whole, expected, suggestion: 'It lies below absolute zero.' });
  }
  if (read < 0 && 'neverNegative' in quantities[name]) {
    throw new Refusal({ read: whole, expected, suggestion: `No ${name} is below zero.` });
  }
  return read;
}

export function expectedQuantity(name: QuantityName): string {
  const definition = quantities[name];
  const units = definition.metric[0] === '1' ? 'as a plain number' : `in ${definition.metric.join(', ')} or the like`;
  return `${article(name)} ${units}`;
}

/** Reads `24.8 Hz`, `1486 r/min`, `100 mV/g`: a number with a unit of the named quantity. Throws Refusal. */
export function parseQuantity<Name extends QuantityName>(
  text: string,
  name: Name,
  writing: Writing = pointDecimals,
): Quantity<Name> {
  const expected = expectedQuantity(name);
  const { value, rest } = leadingNumber(text, expected, writing);
  if ((name === 'ratio' || name === 'fraction') && rest === 'dB') {
    return withinReach(10 ** (value / 20), text, expected) as Quantity<Name>;
  }
  const { before, detector } = splitAtDetector(rest);
  if (detector !== undefined && meaningsOf(before.trim()).length > 0) {
    throw new Refusal({
      read: text,
      expected,
      suggestion: `It carries the detector ${detector}; a ${name} has none. An amplitude belongs elsewhere.`,
    });
  }
  return inUnit(value, rest, name, text) as Quantity<Name>;
}

/** Reads `1.42 dB` as the number 1.42: a loss or margin told in decibels, not the ratio. Throws Refusal. */
export function parseDecibels(text: string, writing: Writing = pointDecimals): number {
  const expected = "a number of decibels, such as '1.42 dB'";
  const { value, rest } = leadingNumber(text, expected, writing);
  if (rest === 'dB') return value;
  const suggestion =
    rest === ''
      ? `The number ${value} has no unit; none is ever assumed.`
      : /^dB\b/.test(rest)
        ? 'A loss or margin has no reference and no detector.'
        : "Its unit is 'dB'.";
  throw new Refusal({ read: text, expected, suggestion });
}

export function article(name: string): string {
  return /^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`;
}
