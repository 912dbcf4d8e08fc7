import type { Showing } from './format.ts';
import { showLevel, showNumber, showQuantity, showSpan, showTolerance } from './format.ts';
import type { Level } from './level.ts';
import { parseLevel } from './level-text.ts';
import { nearest } from './nearest.ts';
import type { Writing } from './number.ts';
import { expectedQuantity, parseQuantity } from './parse.ts';
import { type Quantity, type QuantityName, quantities } from './quantities.ts';
import { Refusal } from './refusal.ts';
import { parseSpan, parseTolerance, type Span, type Tolerance } from './span.ts';

/** One value a person can state: what it means, how it is read from what was typed, how it is shown. */
export interface Field<T> {
  readonly type: 'quantity' | 'level' | 'span' | 'tolerance' | 'curve' | 'count' | 'choice' | 'flag' | 'text' | 'file';
  readonly meaning: string;
  /** The letter the field has in a formula. */
  readonly symbol?: string;
  /** What is expected, as it stands in an error: `a frequency in Hz or the like`. */
  readonly expected: string;
  readonly example: string;
  /** What the field looks like in a file, as JSON Schema. */
  readonly schema: Readonly<Record<string, unknown>>;
  /** A table, which a command may also take from a file named in its place: `orbit.csv`. */
  readonly orTable?: true;
  read(raw: unknown, writing: Writing): T;
  show(value: T, showing?: Showing): string;
  /** The value for scripts: SI number, unit, detector where there is one. */
  json(value: T): unknown;
  /**
   * The value moved by so many decades, for the question what would change the design; a temperature, whose zero means
   * nothing here, by 150 K a decade. Left out by fields that do not vary.
   */
  varied?(value: T, decades: number): T;
}

const kelvinsPerDecade = 150;

function movedBy(name: QuantityName, value: number, decades: number): number {
  return name === 'temperature' ? value + kelvinsPerDecade * decades : value * 10 ** decades;
}

interface FieldOptions {
  readonly symbol?: string;
  readonly example?: string;
}

function symbolOf(options: FieldOptions) {
  return options.symbol === undefined ? {} : { symbol: options.symbol };
}

const textSchema = (description: string, example: string) => ({ type: 'string', description, examples: [example] });

export function textOf(raw: unknown, expected: string): string {
  if (typeof raw === 'string') return raw;
  if (typeof raw === 'number') {
    throw new Refusal({
      read: String(raw),
      expected,
      suggestion: 'A number without a unit is never read as a quantity.',
    });
  }
  throw new Refusal({ read: describe(raw), expected });
}

export function describe(raw: unknown): string {
  if (raw === null || raw === undefined) return '';
  if (Array.isArray(raw)) return 'a list';
  if (typeof raw === 'object') return 'a mapping';
  return String(raw);
}

export function quantityField<Name extends QuantityName>(
  name: Name,
  meaning: string,
  options: FieldOptions = {},
): Field<Quantity<Name>> {
  const expected = expectedQuantity(name);
  const example = options.example ?? exampleOf(name);
  const bare = name === 'ratio' || name === 'count';
  return {
    type: 'quantity',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: bare
      ? { type: ['number', 'string'], description: meaning }
      : textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) =>
      parseQuantity(bare && typeof raw === 'number' ? String(raw) : textOf(raw, expected), name, writing),
    show: (value, showing) => showQuantity(name, value, showing),
    json: (value) => ({ value, unit: quantities[name].unit, shown: showQuantity(name, value) }),
    varied: (value, decades) => movedBy(name, value, decades) as Quantity<Name>,
  };
}

function exampleOf(name: QuantityName): string {
  return `1 ${quantities[name].metric.at(-1)}`.replace(/ 1$/, '');
}

export function levelField<Name extends QuantityName>(
  names: readonly Name[],
  meaning: string,
  options: FieldOptions = {},
): Field<Level<Name>> {
  const example = options.example ?? '4.5 mm/s rms';
  const expected = `${names.join(' or ')} with unit and detector, such as '${example}'`;
  return {
    type: 'level',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) => parseLevel(textOf(raw, expected), names, writing),
    show: (value, showing) => showLevel(value, showing),
    json: (value) => ({
      value: value.value,
      unit: quantities[value.quantity].unit,
      detector: value.detector,
      ...(value.band === undefined ? {} : { band: { ...value.band, unit: 'Hz' } }),
      shown: showLevel(value),
    }),
    varied: (value, decades) => ({ ...value, value: value.value * 10 ** decades }),
  };
}

export function spanField<Name extends QuantityName>(
  name: Name,
  meaning: string,
  options: FieldOptions = {},
): Field<Span<Name>> {
  const expected = `${expectedQuantity(name)}, from low to high`;
  const example = options.example ?? `1..2 ${quantities[name].metric.at(-1)}`;
  return {
    type: 'span',
    meaning,
    expected,
    example,
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, example),
    read: (raw, writing) => parseSpan(textOf(raw, expected), name, writing),
    show: (value, showing) => showSpan(name, value, showing),
    json: (value) => ({ low: value.low, high: value.high, unit: quantities[name].unit, shown: showSpan(name, value) }),
    varied: (value, decades) => ({
      low: movedBy(name, value.low, decades) as Quantity<Name>,
      high: movedBy(name, value.high, decades) as Quantity<Name>,
    }),
  };
}

export function toleranceField(meaning: string, options: FieldOptions = {}): Field<Tolerance> {
  const expected = "a tolerance such as '±10 %', '+41/-29 %' or '±3 dB'";
  return {
    type: 'tolerance',
    meaning,
    expected,
    example: options.example ?? '±10 %',
    ...symbolOf(options),
    schema: textSchema(`${meaning} (${expected})`, options.example ?? '±10 %'),
    read: (raw, writing) => parseTolerance(textOf(raw, expected), writing),
    show: (value, showing) => showTolerance(value, showing),
    json: (value) => ({ low: value.low, high: value.high, unit: '1', shown: showTolerance(value) }),
    varied: (value, decades) => ({ low: value.low * 10 ** decades, high: value.high * 10 ** decades }),
  };
}

/** A spectral curve given by points, in ascending frequency. */
export interface Curve {
  readonly frequencies: readonly number[];
  readonly densities: readonly number[];
}

/** Points `1 Hz: 30 ug/rtHz` of a noise density; between them it is read on log-log paper. */
export function curveField<Name extends QuantityName>(name: Name, meaning: string): Field<Curve> {
  const expected = `a mapping from frequency to ${name}, such as '10 Hz: 8 ${quantities[name].metric.at(-1)}'`;
  return {
    type: 'curve',
    meaning,
    expected,
    example: `{10 Hz: 8 ${quantities[name].metric.at(-1)}}`,
    schema: { type: 'object', description: `${meaning} (${expected})`, additionalProperties: { type: 'string' } },
    read: (raw, writing) => {
      if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
        throw new Refusal({ read: describe(raw), expected });
      }
      const points = Object.entries(raw).map(([frequency, density]) => ({
        frequency: parseQuantity(frequency, 'frequency', writing) as number,
        density: parseQuantity(textOf(density, expected), name, writing) as number,
      }));
      if (points.length === 0) throw new Refusal({ read: 'an empty mapping', expected });
      points.sort((a, b) => a.frequency - b.frequency);
      const bad = points.find((point) => !(point.frequency > 0 && point.density > 0));
      if (bad !== undefined) {
        throw new Refusal({ read: `${bad.frequency} Hz: ${bad.density}`, expected: `${expected}, both above zero` });
      }
      return { frequencies: points.map((p) => p.frequency), densities: points.map((p) => p.density) };
    },
    show: (value, showing) =>
      value.frequencies
        .map((f, i) => `${showQuantity('frequency', f, showing)}: ${showQuantity(name, value.densities[i]!, showing)}`)
        .join(', '),
    json: (value) => ({ ...value, unit: quantities[name].unit }),
    varied: (value, decades) => ({ ...value, densities: value.densities.map((each) => each * 10 ** decades) }),
  };
}

export function countField(meaning: string, options: FieldOptions & { readonly least?: number } = {}): Field<number> {
  const least = options.least ?? 1;
  const expected = `a whole number, ${least} or more`;
  return {
    type: 'count',
    meaning,
    expected,
    example: options.example ?? '9',
    ...symbolOf(options),
    schema: { type: 'integer', minimum: least, description: meaning },
    read: (raw) => {
      const value =
        typeof raw === 'number'
          ? raw
          : typeof raw === 'string' && /^\s*\d{1,9}\s*$/.test(raw)
            ? Number(raw)
            : Number.NaN;
      if (!Number.isSafeInteger(value) || value < least) throw new Refusal({ read: describe(raw), expected });
      return value;
    },
    show: (value) => String(value),
    json: (value) => ({ value, unit: '1', shown: String(value) }),
  };
}

/** One of a list of words. */
export function choiceField<const Choice extends string>(
  choices: readonly Choice[],
  meaning: string,
  options: FieldOptions = {},
): Field<Choice> {
  const expected = `one of: ${choices.join(', ')}`;
  return {
    type: 'choice',
    meaning,
    expected,
    example: options.example ?? choices[0]!,
    ...symbolOf(options),
    schema: { enum: choices, description: meaning },
    read: (raw) => {
      const text = describe(raw).trim();
      const choice = choices.find((each) => each === text);
      if (choice !== undefined) return choice;
      const near = nearest(text, choices);
      throw new Refusal({
        read: text,
        expected,
        ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
      });
    },
    show: (value) => value,
    json: (value) => value,
  };
}

export function flagField(meaning: string): Field<boolean> {
  const expected = 'yes or no';
  return {
    type: 'flag',
    meaning,
    expected,
    example: 'yes',
    schema: { enum: ['yes', 'no', true, false], description: meaning },
    read: (raw) => {
      if (raw === true || raw === 'yes') return true;
      if (raw === false || raw === 'no') return false;
      throw new Refusal({ read: describe(raw), expected });
    },
    show: (value) => (value ? 'yes' : 'no'),
    json: (value) => value,
  };
}

export function textField(meaning: string, options: FieldOptions = {}): Field<string> {
  const expected = 'a text of at most 2000 characters';
  return {
    type: 'text',
    meaning,
    expected,
    example: options.example ?? 'text',
    ...symbolOf(options),
    schema: { type: 'string', description: meaning, maxLength: 2000 },
    read: (raw) => {
      const text = typeof raw === 'number' ? String(raw) : raw;
      if (typeof text !== 'string' || text.length > 2000) throw new Refusal({ read: describe(raw), expected });
      return text;
    },
    show: (value) => value,
    json: (value) => value,
  };
}

/** A plain number or what a formula calls a ratio, shown with few digits. */
export function numberField(meaning: string, options: FieldOptions = {}): Field<number> {
  return {
    ...quantityField('ratio', meaning, options),
    show: (value: number, showing?: Showing) => showNumber(value, showing?.digits, showing?.decimal),
  } as Field<number>;
}

/**
 * A file named by its path. The command that reads it hands its content on as plain data; `read` makes the model of it.
 */
export function fileField<T>(meaning: string, read: (content: unknown) => T, show: (value: T) => string): Field<T> {
  const expected = 'the path of a readable file';
  return {
    type: 'file',
    meaning,
    expected,
    example: 'budget.yaml',
    schema: { type: 'string', description: meaning },
    read: (raw) => read(raw),
    show,
    json: (value) => show(value),
  };
}
