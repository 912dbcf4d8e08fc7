import type { Band } from './level.ts';
import { leadingNumber, pointDecimals, valueText, type Writing } from './number.ts';
import { expectedQuantity, parseQuantity } from './parse.ts';
import type { Quantity, QuantityName } from './quantities.ts';
import { Refusal } from './refusal.ts';

/** Reads `10-1000 Hz`, `2..10 kHz`, `10 Hz to 1 kHz`. A band has a width and begins at zero or above. */
export function parseBand(text: string, whole: string = text, writing: Writing = pointDecimals): Band {
  const { low, high } = parseSpan(text, 'frequency', writing, whole);
  if (low < high) return { low, high };
  throw new Refusal({ read: whole, expected: "a band from low to high, such as '10..1000 Hz'" });
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
  const sides = sidesOf(valueText(text, expected));
  if (sides === undefined) {
    const single = parseQuantity(text, name, writing);
    return { low: single, high: single };
  }
  const [left, right] = sides;
  const high = parseQuantity(right, name, writing);
  const bareNumber = /^[+\-\u2212]?[\d.,]+(?:[eE][+\-\u2212]?\d+)?/;
  const low = parseQuantity(
    bareNumber.exec(left)?.[0] === left ? `${left} ${right.replace(bareNumber, '').trim()}` : left,
    name,
    writing,
  );
  if (low > high) {
    throw new Refusal({ read: whole, expected, suggestion: 'The first value is the larger one; are they exchanged?' });
  }
  return { low, high };
}

/** The two sides of a range, if it is one. A hyphen divides before a digit, but not within `1e-3` or `m s-2`. */
function sidesOf(text: string): readonly [string, string] | undefined {
  const spelled = / *(?:\.\.\.?|…| to ) */.exec(text);
  if (spelled !== null) return sides(text, spelled.index, spelled.index + spelled[0].length);
  for (const hyphen of text.matchAll(/(?<=\S) ?[-–] ?(?=\d)/g)) {
    const [left, right] = sides(text, hyphen.index, hyphen.index + hyphen[0].length);
    const exponent = /\d[eE]$/.test(left);
    const power = /\p{L}$/u.test(left) && /^\d$/.test(right);
    if (left !== '' && !exponent && !power) return [left, right];
  }
  return undefined;
}

function sides(text: string, from: number, to: number): readonly [string, string] {
  return [text.slice(0, from).trim(), text.slice(to).trim()];
}

/** How far a reading may lie from the truth, as fractions: low is negative. */
export interface Tolerance {
  readonly low: number;
  readonly high: number;
}

/** Reads `±10 %`, `+41/-29.3 %`, `-20/+10 %`, `±3 dB`, `+1/-3 dB`. Throws Refusal. */
export function parseTolerance(text: string, writing: Writing = pointDecimals): Tolerance {
  const expected = "a tolerance such as '±10 %', '+41/-29 %' or '±3 dB'";
  const plain = valueText(text, expected).replace(/\u2212/g, '-');
  const both = /^(?:±|\+ ?\/? ?-) ?([\d.,]+) ?(%|dB)$/.exec(plain);
  const upFirst = /^\+ ?([\d.,]+) ?(%|dB)? ?\/ ?- ?([\d.,]+) ?(%|dB)$/.exec(plain);
  const downFirst = /^- ?([\d.,]+) ?(%|dB)? ?\/ ?\+ ?([\d.,]+) ?(%|dB)$/.exec(plain);
  const match =
    both !== null
      ? { up: both[1]!, down: both[1]!, units: [both[2]!] }
      : upFirst !== null
        ? { up: upFirst[1]!, down: upFirst[3]!, units: [upFirst[2] ?? upFirst[4]!, upFirst[4]!] }
        : downFirst !== null
          ? { up: downFirst[3]!, down: downFirst[1]!, units: [downFirst[2] ?? downFirst[4]!, downFirst[4]!] }
          : undefined;
  if (match === undefined || new Set(match.units).size > 1) {
    const oneSided = /^\+? ?([\d.,]+) ?(%|dB)$/.exec(plain);
    const suggestion =
      oneSided &&
      `To both sides it is '±${oneSided[1]} ${oneSided[2]}', to one side '+${oneSided[1]}/-0 ${oneSided[2]}'.`;
    throw new Refusal({ read: text, expected, ...(suggestion === null ? {} : { suggestion }) });
  }
  const up = leadingNumber(match.up, expected, writing).value;
  const down = leadingNumber(match.down, expected, writing).value;
  if (match.units[0] === '%') return { low: -down / 100, high: up / 100 };
  if (up > 120) throw new Refusal({ read: text, expected, suggestion: 'No tolerance is that wide.' });
  return { low: 10 ** (-down / 20) - 1, high: 10 ** (up / 20) - 1 };
}
