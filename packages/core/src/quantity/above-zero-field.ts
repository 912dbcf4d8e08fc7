import { describe, type Field } from './field.ts';
import { Refusal } from './refusal.ts';

/** The same field, refusing what is not above zero: of a level its value, of a span its lower end. */
export function aboveZeroField<T>(field: Field<T>, suggestion?: string): Field<T> {
  const expected = `${field.expected}, above zero`;
  return {
    ...field,
    expected,
    read: (raw, writing) => {
      const value = field.read(raw, writing);
      if (least(value) > 0) return value;
      throw new Refusal({ read: describe(raw), expected, ...(suggestion === undefined ? {} : { suggestion }) });
    },
  };
}

/** The same field, refusing what is below zero: a width, a length. */
export function notBelowZeroField<T>(field: Field<T>): Field<T> {
  const expected = `${field.expected}, zero or more`;
  return {
    ...field,
    expected,
    read: (raw, writing) => {
      const value = field.read(raw, writing);
      if (least(value) >= 0) return value;
      throw new Refusal({ read: describe(raw), expected, suggestion: 'Was a dash meant, not a minus?' });
    },
  };
}

/** The same field of a count, refusing what is more than `most`. */
export function countUpTo(most: number, field: Field<number>): Field<number> {
  const expected = `${field.expected}, at most ${most}`;
  return {
    ...field,
    expected,
    schema: { ...field.schema, maximum: most },
    read: (raw, writing) => {
      const value = field.read(raw, writing);
      if (value <= most) return value;
      throw new Refusal({ read: describe(raw), expected });
    },
  };
}

function least(value: unknown): number {
  if (typeof value === 'number') return value;
  if (typeof value !== 'object' || value === null) return Number.NaN;
  if ('value' in value) return least(value.value);
  return 'low' in value ? least(value.low) : Number.NaN;
}
