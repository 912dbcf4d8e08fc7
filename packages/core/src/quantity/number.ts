import { Refusal } from './refusal.ts';

/** How numbers are written in the text being read. */
export interface Writing {
  readonly decimal: 'point' | 'comma';
}
export const pointDecimals: Writing = { decimal: 'point' };

/** A value is shorter than this: what is longer is refused before anything else looks at it. */
const longestText = 400;

/** Nothing this trade measures lies outside, and inside it no product or square leaves the numbers of the machine. */
const largestNumber = 1e30;

/**
 * The text of one value with plain spaces. Invisible characters are refused: what acts on the reader's eye and not on
 * the number could make two readers of one file see two values.
 */
export function valueText(text: string, expected: string): string {
  if (text.length > longestText) {
    throw new Refusal({ read: text, expected, suggestion: `A value is shorter than ${longestText} characters.` });
  }
  const plain = text
    .normalize('NFC')
    .replace(/[\p{Zs}\t]/gu, ' ')
    .trim();
  const invisible = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u.exec(plain);
  if (invisible === null) return plain;
  const code = plain.codePointAt(invisible.index)!.toString(16).toUpperCase().padStart(4, '0');
  throw new Refusal({
    read: text,
    expected,
    suggestion: `It holds an invisible character (U+${code}); type the value again.`,
  });
}

/** Splits text into its leading number and the rest, refusing a decimal comma where none is declared. */
export function leadingNumber(
  text: string,
  expected: string,
  writing: Writing,
): { readonly value: number; readonly rest: string } {
  const plain = valueText(text, expected);
  const match = /^([+\-\u2212]?)(\d[\d.,]*|[.,]\d+)(?:[eE]([+\-\u2212]?\d{1,3})(?![\p{L}\d]))?/u.exec(plain);
  if (match === null) throw new Refusal({ read: text, expected, ...withoutNumber(plain) });
  const digits = match[2]!;
  const separator = writing.decimal === 'comma' ? ',' : '.';
  const other = writing.decimal === 'comma' ? '.' : ',';
  if (digits.includes(other) || digits.split(separator).length > 2) {
    throw new Refusal({
      read: text,
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
  if (value === 0 && /[1-9]/.test(digits)) {
    throw new Refusal({ read: text, expected, suggestion: 'The number is too small to be told from zero.' });
  }
  return { value: withinReach(value, text, expected), rest: plain.slice(match[0].length).trim() };
}

/** Refuses what is not finite, or so large or small that computing with it would leave the numbers of the machine. */
export function withinReach(value: number, text: string, expected: string): number {
  const size = Math.abs(value);
  if (!(size <= largestNumber)) throw new Refusal({ read: text, expected, suggestion: 'The number is too large.' });
  if (size !== 0 && size < 1 / largestNumber) {
    throw new Refusal({ read: text, expected, suggestion: 'The number is too small.' });
  }
  return value;
}

const notAvailable = /^(?:n\/?\.?a\.?|#n\/a|nil|none|null|nan|tbd|tbc|unknown|\?+|[-–—\u2212]+|)$/i;

function withoutNumber(plain: string): { readonly suggestion?: string } {
  if (notAvailable.test(plain)) {
    return { suggestion: "Nothing is never read as zero; write 'unknown' where the value is not known." };
  }
  if (/^[~≈±<>≤≥]|^(?:approx|about|ca\b|circa)/i.test(plain)) {
    return { suggestion: 'Write the number alone, or a range from low to high where a range is asked for.' };
  }
  return /\d/.test(plain) ? { suggestion: 'A value begins with its number in plain digits 0 to 9.' } : {};
}
