import { type Dimension, none, sameDimension, times } from './dimension.ts';
import { knownUnitSymbols, type Unit, unitsCalled } from './units.ts';

/** Every meaning a written unit may have: `mV/g` is volts per gravity or per gram until a quantity is expected. */
export function meaningsOf(text: string): readonly Unit[] {
  const tokens = tokensOf(text);
  if (tokens === undefined || tokens.length === 0) return [];
  const cursor = { tokens, at: 0 };
  const meanings = product(cursor);
  return cursor.at === tokens.length ? meanings : [];
}

/** The one meaning of a written unit that has the dimension expected, if there is one. */
export function meaningWith(text: string, dimension: Dimension): Unit | undefined {
  return meaningsOf(text).find((meaning) => sameDimension(meaning.dimension, dimension));
}

interface Cursor {
  readonly tokens: readonly string[];
  at: number;
}

function tokensOf(text: string): readonly string[] | undefined {
  const plain = text
    .trim()
    .replace(/sqrt\s*\(?\s*Hz\s*\)?|√\s*\(?\s*Hz\s*\)?|Hz\s*\^\s*(?:0?\.5|\(1\/2\))/g, 'Hz^0.5')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/⁻¹/g, '^-1')
    .replace(/[·⋅×]/g, '*');
  const tokens: string[] = [];
  let rest = plain;
  while (rest !== '') {
    const match = /^\s*([*/().]|\^-?[\d.]+|1|[%°]?[\p{L}°]+|%)(.*)$/su.exec(rest);
    if (match === null) return rest.trim() === '' ? tokens : undefined;
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
    meanings = meanings.flatMap((a) => right.flatMap((b) => combined(a, b, divided ? -1 : 1)));
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
  return meanings.flatMap((meaning) => combined({ factor: 1, dimension: none }, meaning, power));
}

/** A product of two units. °C inside one is a difference of temperature: the zero does not travel. */
function combined(a: Unit, b: Unit, power: number): readonly Unit[] {
  return [{ factor: a.factor * b.factor ** power, dimension: times(a.dimension, b.dimension, power) }];
}

/** The known unit nearest to what was written, for a suggestion. */
export function nearestUnit(text: string): string | undefined {
  return nearest(text, knownUnitSymbols);
}

/** The candidate with the fewest edits to what was written, within a third of its length. */
export function nearest(text: string, candidates: readonly string[]): string | undefined {
  const wanted = text.trim().slice(0, 60).toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(1, Math.ceil(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    const edits = editDistance(wanted, candidate.toLowerCase());
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(replaced, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}
