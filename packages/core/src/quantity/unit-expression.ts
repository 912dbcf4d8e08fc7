import { type Dimension, none, sameDimension, times } from './dimension.ts';
import { type QuantityName, quantities } from './quantities.ts';
import { Broken } from './refusal.ts';
import { type Unit, unitsCalled } from './units.ts';

/** No unit of the trade is longer; what is longer is no unit, and is not searched. */
const longestUnit = 120;

/**
 * Every meaning a written unit may have: `mV/g` is volts per gravity or per gram until a quantity is expected. The
 * word `per` divides by all that follows it: `mV per in/s` is mV/(in/s), while `mV/in/s` reads from the left.
 */
export function meaningsOf(text: string): readonly Unit[] {
  const tokens = tokensOf(text);
  if (tokens === undefined || tokens.length === 0) return [];
  if (tokens.length === 1 && tokens[0] === '1') return [{ factor: 1, dimension: none }];
  const cursor = { tokens, at: 0 };
  const meanings = product(cursor);
  return cursor.at === tokens.length ? meanings : [];
}

/** The one meaning of a written unit that has the dimension expected, if there is one. */
export function meaningWith(text: string, dimension: Dimension): Unit | undefined {
  return meaningsOf(text).find((meaning) => sameDimension(meaning.dimension, dimension));
}

const angularSpeed: Dimension = [0, 0, -1, 0, 0, 1];

/**
 * The meaning a written unit has for a named quantity. A frequency or speed may be written as an angular one: ω = 2πf.
 * What counts (turns, counts) is a unit of a count and of nothing else.
 */
export function meaningFor(text: string, name: QuantityName): Unit | undefined {
  const meanings = meaningsOf(text);
  const { dimension } = quantities[name];
  const direct = meanings.find(
    (meaning) => sameDimension(meaning.dimension, dimension) && (meaning.counted === true) === (name === 'count'),
  );
  if (direct !== undefined || (name !== 'frequency' && name !== 'shaft speed')) return direct;
  const angular = meanings.find((meaning) => sameDimension(meaning.dimension, angularSpeed));
  return angular && { factor: angular.factor / (2 * Math.PI), dimension };
}

/** The units our own lists name, read once: showing a value asks for them again and again. */
const usualUnits = new Map(
  Object.entries(quantities).map(([name, { unit, metric, us }]) => {
    const texts = [unit, ...metric, ...us];
    return [name, new Map(texts.map((text) => [text, readUnit(text, name as QuantityName)]))];
  }),
);

/** The unit of a quantity, where the text is known to be one. Throws Broken where it is not. */
export function unitFor(text: string, name: QuantityName): Unit {
  return usualUnits.get(name)?.get(text) ?? readUnit(text, name);
}

function readUnit(text: string, name: QuantityName): Unit {
  if (text === '1') return { factor: 1, dimension: none };
  const meaning = meaningFor(text, name);
  if (meaning === undefined) throw new Broken('a unit has the dimension of its quantity', { unit: text, name });
  return meaning;
}

interface Cursor {
  readonly tokens: readonly string[];
  at: number;
}

function tokensOf(text: string): readonly string[] | undefined {
  if (text.length > longestUnit) return undefined;
  const sides = text.trim().split(/\s+per\s+/);
  if (sides.length > 2) return undefined;
  const plain = (sides.length === 2 ? `${sides[0]}/(${sides[1]})` : sides[0]!)
    .replace(/(?:√|sqrt)\s*(?:\(\s*Hz\s*\)|Hz)|Hz\s*\^\s*(?:0?\.5|\(1\/2\))/g, 'Hz^0.5')
    .replace(/⁻¹/g, '^-1')
    .replace(/⁻²/g, '^-2')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/[·⋅×]/g, '*');
  const tokens: string[] = [];
  let rest = plain;
  while (rest !== '') {
    const match = /^\s*([*/().]|\^-?\d(?:\.5)?(?![\d.])|\^0\.5|[%°]?[\p{L}°]+|%)(.*)$/su.exec(rest);
    if (match === null) {
      // A one stands only before a division, as in 1/s: never between the digits of a number.
      const one = tokens.length === 0 ? /^\s*1\s*(\/.*|)$/s.exec(rest) : null;
      if (one === null) return rest.trim() === '' ? tokens : undefined;
      tokens.push('1');
      rest = one[1]!;
      continue;
    }
    tokens.push(match[1]!);
    rest = match[2]!;
    const power = /^(-?\d)(?![\d.])(.*)$/s.exec(rest);
    if (power !== null && /^\p{L}/u.test(match[1]!)) {
      tokens.push(`^${power[1]}`);
      rest = power[2]!;
    }
    if (tokens.length > 24) return undefined;
  }
  return tokens;
}

function product(cursor: Cursor): readonly Unit[] {
  let meanings = factor(cursor);
  while (cursor.at < cursor.tokens.length && cursor.tokens[cursor.at] !== ')') {
    const operator = cursor.tokens[cursor.at]!;
    const divided = operator === '/';
    if (divided || operator === '*' || operator === '.') cursor.at++;
    const right = factor(cursor);
    meanings = distinct(meanings.flatMap((a) => right.map((b) => combined(a, b, divided ? -1 : 1))));
    if (meanings.length === 0) return [];
  }
  return meanings;
}

function factor(cursor: Cursor): readonly Unit[] {
  const token = cursor.tokens[cursor.at];
  if (token === undefined) return [];
  cursor.at++;
  let meanings: readonly Unit[];
  if (token === '(') {
    meanings = product(cursor);
    if (cursor.tokens[cursor.at] !== ')') return [];
    cursor.at++;
  } else if (token === '1') {
    meanings = [{ factor: 1, dimension: none }];
  } else {
    meanings = unitsCalled(token);
  }
  const next = cursor.tokens[cursor.at];
  if (next?.startsWith('^') !== true) return meanings;
  cursor.at++;
  const power = Number(next.slice(1));
  if (power === 0 || Math.abs(power) > 4) return [];
  return meanings.map((meaning) => combined({ factor: 1, dimension: none }, meaning, power));
}

/** A product of two units. °C inside one is a difference of temperature: the zero does not travel. */
function combined(a: Unit, b: Unit, power: number): Unit {
  return { factor: a.factor * b.factor ** power, dimension: times(a.dimension, b.dimension, power) };
}

/** The first meaning of each dimension, so that a long product of ambiguous symbols does not multiply them. */
function distinct(meanings: readonly Unit[]): readonly Unit[] {
  return meanings.filter(
    (meaning, index) => meanings.findIndex((other) => sameDimension(other.dimension, meaning.dimension)) === index,
  );
}
