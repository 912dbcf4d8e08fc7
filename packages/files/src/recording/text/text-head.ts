import type { Remark } from '@soundpost/core';
import type { Separator } from '../open-recording.ts';
import { recordedUnit } from '../recorded-unit.ts';
import { wordsOf } from '../text-lines.ts';
import { fieldsOf } from './number-layout.ts';

/** What lines of a head may say, by how they begin. */
const facts = {
  rate: /^((sampling|sample|scan|acquisition) ?(rate|frequency|freq)|fs|rate)\b/,
  step: /^(delta ?x|dt|(sampling|sample|time) ?(interval|step|increment)|increment|x ?increment)\b/,
  samples: /^((number|no\.?|nr\.?) of samples|samples|sample count|points)\b/,
  unit: /^((y|channel) )?(unit|units)( label)?\b/,
  sensitivity: /^sensitivit(y|ies)\b/,
  gain: /^gains?\b/,
  coupling: /^(input )?couplings?\b/,
  speed: /^((shaft|machine|running|rotation(al)?) )?speed\b|^rpm\b/,
  dimension: /^x dimension\b/,
  date: /^(start )?date\b/,
  time: /^(start )?time( of day)?\b|^start\b/,
} as const;
type Fact = keyof typeof facts;

/** A line of the head that says one of the facts: a value for each column, or one for all. */
export interface SaidLine {
  /** What stands in brackets after the name of the fact. */
  readonly unit: string | undefined;
  readonly values: readonly string[];
}

export interface TextHead {
  readonly said: Readonly<Partial<Record<Fact, SaidLine>>>;
  readonly names: readonly string[];
  /** One for each column, where a line of them stands there. */
  readonly units: readonly string[];
  readonly remarks: readonly Remark[];
}

/** Reads the lines above the rows. A later line says more precisely what an earlier one said. */
export function textHead(lines: readonly string[], separator: Separator, columns: number): TextHead {
  const filled = lines.map(wordsOf).filter((each) => each.trim() !== '');
  const units = unitsLine(filled.at(-1), separator, columns);
  const above = units.length === 0 ? filled : filled.slice(0, -1);
  const names = namesLine(above.at(-1), separator, columns);
  const rest = names.length === 0 ? above : above.slice(0, -1);
  const said: Partial<Record<Fact, SaidLine>> = {};
  const remarks: Remark[] = [];
  for (const line of rest) {
    const pair = pairOf(line, separator);
    if (pair === undefined) continue;
    const fact = factOf(pair.key);
    if (fact === undefined) {
      const text = pair.values.filter((each) => each !== '').join(', ');
      if (text !== '' && remarks.length < 40) remarks.push({ name: pair.key.slice(0, 60), text: text.slice(0, 200) });
    } else if (pair.values.some((each) => each !== '')) {
      const bracket = /[[(]([^\])]+)[\])]/.exec(pair.key)?.[1]?.trim();
      said[fact] = { unit: bracket, values: pair.values };
    }
  }
  return { said, names, units, remarks };
}

/** The value a fact has in a column: its own, or the one that is said for all. */
export function valueFor({ said, names }: TextHead, fact: Fact, column: number, columns: number): string {
  const line = said[fact];
  if (line === undefined) return '';
  // The name of the fact stands in the place of the time column, where there is one.
  const before = timeName.test(nameAndUnit(names[0] ?? '').name) ? 1 : 0;
  const own = line.values.length > 1 && line.values.length >= columns - before;
  return (own ? line.values[column - before] : line.values[0])?.trim() ?? '';
}

/** What columns of times are called. */
export const timeName = /^(?:x[ _]value|time|times|elapsed(?: time)?|t|zeit|temps|tempo|tiempo)$/i;

function pairOf(line: string, separator: Separator) {
  const plain = line.replace(/^\s*(?:#+|%+|\/\/|;)\s*/, '');
  const fields = separator === 'space' ? [plain] : fieldsOf(plain, separator);
  if (fields.length > 1 && fields[0] !== '') return { key: fields[0]!, values: fields.slice(1) };
  // Above a single column the head has signs of its own.
  const parts = plain.split(/[;\t]|,(?!\d)/).map((each) => each.trim());
  if (parts.length > 1 && factOf(parts[0]!) !== undefined) return { key: parts[0]!, values: parts.slice(1) };
  const match = /^([^:=]{1,60})[:=]\s*(.*)$/.exec(plain);
  return match === null ? undefined : { key: match[1]!.trim(), values: [match[2]!.trim()] };
}

function factOf(key: string): Fact | undefined {
  const plain = key
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .trim();
  return (Object.keys(facts) as Fact[]).find((fact) => facts[fact].test(plain));
}

function namesLine(line: string | undefined, separator: Separator, columns: number): readonly string[] {
  if (line === undefined) return [];
  const plain = line.replace(/^\s*(?:#+|%+)\s*/, '');
  const names = fieldsOf(plain, separator).map((each) => each.replace(/^(["'])(.*)\1$/, '$2').trim());
  if (names.length < columns || names.length > columns + 1) return [];
  const fact = factOf(names[0]!);
  const mayBeName = fact === undefined || ['time', 'date', 'speed', 'rate'].includes(fact);
  const saysValues = names.slice(1).some((each) => /^[+-]?\d/.test(each)) || /[:=]\s*\S/.test(names[0]!);
  return !mayBeName || saysValues ? [] : names;
}

/** A line of nothing but units, one for each column: `s;g;g`. */
function unitsLine(line: string | undefined, separator: Separator, columns: number): readonly string[] {
  if (line === undefined) return [];
  const units = fieldsOf(line, separator).map((each) => each.replace(/^[[("]+|[\])"]+$/g, '').trim());
  if (units.length < columns || units.length > columns + 1) return [];
  const filled = units.filter((each) => each !== '');
  // Single letters name axes and times too: a line of them is one of names unless brackets say otherwise.
  const plainly = filled.some((each) => each.length > 1) || /[[(]/.test(line);
  const known = filled.every((each) => recordedUnit(each).unit.known);
  return filled.length > 0 && known && (plainly || columns === 1 || filled.some((each) => /^[gV]$/.test(each)))
    ? units
    : [];
}

/** `Time/s`, `a/(m/s²)` as physicists write a quantity over its unit; of times also `t_ms`. `m/s` alone is a unit. */
function withSuffix(text: string): { readonly name: string; readonly unit: string } | undefined {
  const time = /^\s*(t|time)[_ ](s|sec|ms|us|µs)\s*$/i.exec(text);
  if (time !== null) return { name: time[1]!, unit: time[2]! };
  const cut = text.indexOf('/');
  if (cut <= 0 || recordedUnit(text).unit.known) return undefined;
  const [name, unit] = [text.slice(0, cut).trim(), text.slice(cut + 1).trim()];
  return recordedUnit(unit).unit.known ? { name, unit } : undefined;
}

/** `Acceleration (g)` or `Acceleration [g]`: the name and the unit in brackets at its end. */
export function nameAndUnit(text: string): { readonly name: string; readonly unit: string } {
  const match = /^(.*?)\s*[[(]([^\])]*)[\])]\s*$/.exec(text);
  if (match !== null) return { name: match[1]!.trim(), unit: match[2]!.trim() };
  return withSuffix(text) ?? { name: text.trim(), unit: '' };
}
