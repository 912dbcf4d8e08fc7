import type { Showing } from './format.ts';
import { nearest } from './nearest.ts';
import type { Writing } from './number.ts';
import { Refusal } from './refusal.ts';

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

/** What a field may say besides its meaning. */
export interface FieldOptions {
  readonly symbol?: string;
  readonly example?: string;
}

export function symbolOf(options: FieldOptions) {
  return options.symbol === undefined ? {} : { symbol: options.symbol };
}

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
