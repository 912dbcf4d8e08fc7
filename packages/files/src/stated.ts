import { type Field, notStated, type Stated, stated as statedValue, statuses } from '@soundpost/core';
import { listOf } from './collections.ts';
import { entryOf, type Placed, type PlacedMap } from './placed.ts';
import {
  choice,
  fieldSchema,
  type JsonSchema,
  made,
  plain,
  type Reader,
  type Reading,
  readField,
  text,
  type Unread,
  unread,
} from './reader.ts';
import { optionally, record } from './record.ts';

/**
 * A value as somebody states it, in all the ways a file allows: as it is (`160 kW`), as `unknown`, with how and whence
 * it is known (`value`, `status`, `source`), or as not known (`unknown: true`) with who could answer (`ask`) and the
 * bounds it is believed to lie between (`between: [low, high]`).
 */
export function stated<T>(field: Field<T>): Reader<Stated<T>> {
  const alone: Reader<Stated<T>> = {
    expected: `${field.expected}, or 'unknown'`,
    schema: { anyOf: [fieldSchema(field), { const: 'unknown' }] },
    read: (placed, reading) => valueOrUnknown(field, placed, reading),
  };
  const statement = statementOf(field, alone);
  return {
    expected: alone.expected,
    schema: schemaOf(field),
    read: (placed, reading) => {
      const saysMore =
        placed.kind === 'map' && (field.type !== 'curve' || statementKeys.some((key) => has(placed, key)));
      return (saysMore ? statement : alone).read(placed, reading);
    },
  };
}

const statementKeys = ['value', 'status', 'source', 'unknown', 'ask', 'between'] as const;

const has = (map: PlacedMap, key: string) => entryOf(map, key) !== undefined;

function valueOrUnknown<T>(field: Field<T>, placed: Placed, reading: Reading): Stated<T> | Unread {
  if (placed.kind === 'scalar' && placed.source.trim() === 'unknown') return notStated;
  const value = readField(field, placed, reading);
  return value === unread ? unread : statedValue(value, written(placed));
}

/** What was typed, on one line. */
function written(placed: Placed): string {
  if (placed.kind === 'scalar') return placed.source;
  if (placed.kind === 'list') return placed.elements.map(written).join(', ');
  return placed.entries.map(({ key, value }) => `${key}: ${written(value)}`).join(', ');
}

const status = choice(statuses, 'How the value is known');
const source = text('Where the value comes from: a drawing number, a certificate and its page', {
  example: 'drawing 1234-5, sheet 2',
});
const ask = text('Who could answer', { example: 'the maker of the machine' });

const notKnown: Reader<true> = {
  expected: 'true, for a value that is not known',
  schema: { enum: [true, 'yes'], description: 'The value is not known' },
  read: (placed, reading) =>
    placed.kind === 'scalar' && (placed.value === true || placed.source === 'yes')
      ? true
      : reading.refuse(placed, {
          read: placed.kind === 'scalar' ? placed.source : 'a collection',
          expected: "'unknown: true'",
          suggestion: "Say who could answer under 'ask', and the bounds under 'between'.",
        }),
};

function statementOf<T>(field: Field<T>, alone: Reader<Stated<T>>): Reader<Stated<T>> {
  const parts = {
    value: optionally(alone),
    status: optionally(status),
    source: optionally(source),
    unknown: optionally(notKnown),
    ask: optionally(ask),
    between: optionally(boundsOf(field)),
  };
  const whole = record(`a statement of ${startingSmall(field.meaning)}`, parts);
  return made(whole, (read, placed, refuse): Stated<T> | Unread => {
    const refuseKey = (key: string, expected: string): Unread =>
      refuse(placed.kind === 'map' ? (entryOf(placed, key)?.at ?? placed) : placed, { read: key, expected });
    const { value } = read;
    if (value === undefined && read.unknown === undefined) {
      return refuse(placed, { read: '', expected: `'value': ${field.expected}; or 'unknown: true'` });
    }
    if (value?.known === true) {
      if (read.unknown !== undefined) return refuseKey('unknown', "either 'value' or 'unknown', not both");
      for (const key of ['ask', 'between'] as const) {
        if (read[key] !== undefined) return refuseKey(key, `'${key}' only where the value is unknown`);
      }
      return statedValue(value.value, value.written, read.status, read.source);
    }
    for (const key of ['status', 'source'] as const) {
      if (read[key] !== undefined) return refuseKey(key, `'${key}' only beside a value that is known`);
    }
    const { ask: who, between } = read;
    return { known: false, ...(who === undefined ? {} : { ask: who }), ...(between === undefined ? {} : { between }) };
  });
}

const boundsMeaning = 'the low and the high bound, [low, high]';

function boundsOf<T>(field: Field<T>): Reader<{ readonly low: T; readonly high: T }> {
  const two = listOf(plain(field), boundsMeaning, { least: 2, most: 2 });
  return made(two, ([low, high], placed, refuse) => {
    const [from, to] = [magnitude(low), magnitude(high)];
    if (from !== undefined && to !== undefined && from > to) {
      return refuse(placed, {
        read: written(placed),
        expected: 'the low bound before the high one',
        suggestion: 'Are they exchanged?',
      });
    }
    return { low: low!, high: high! };
  });
}

/** The number of a quantity or level; of what has none, nothing. */
function magnitude(value: unknown): number | undefined {
  if (typeof value === 'number') return value;
  const inner = typeof value === 'object' && value !== null && 'value' in value ? value.value : undefined;
  return typeof inner === 'number' ? inner : undefined;
}

function startingSmall(meaning: string): string {
  return /^\p{Lu}\p{Ll}/u.test(meaning) ? meaning[0]!.toLowerCase() + meaning.slice(1) : meaning;
}

function schemaOf(field: Field<unknown>): JsonSchema {
  const value = fieldSchema(field);
  const { description: _, ...bare } = value;
  const origin = { status: status.schema, source: source.schema };
  const guess = {
    ask: ask.schema,
    between: { type: 'array', description: boundsMeaning, items: bare, minItems: 2, maxItems: 2 },
  };
  const examples = value.examples;
  return {
    description: `${field.meaning} (${field.expected}; or 'unknown')`,
    ...(Array.isArray(examples) ? { examples: [...examples, 'unknown'] } : {}),
    anyOf: [
      bare,
      { const: 'unknown' },
      { ...statement('The value with its origin', { value: bare, ...origin }), required: ['value'] },
      {
        ...statement('Not known: who could answer, and between which bounds it lies', {
          unknown: notKnown.schema,
          value: { const: 'unknown' },
          ...guess,
        }),
        anyOf: [{ required: ['unknown'] }, { required: ['value'] }],
      },
    ],
  };
}

function statement(description: string, properties: JsonSchema): JsonSchema {
  return { type: 'object', description, properties, additionalProperties: false };
}
