import type { JsonSchema } from './reader.ts';

/** Shorter than this, a repeated schema is easier to read where it stands. */
const worthSharing = 160;

const oneSchema = ['additionalProperties', 'items', 'propertyNames', 'if', 'then', 'else', 'not'];
const listOfSchemas = ['allOf', 'anyOf', 'oneOf'];
const mapOfSchemas = ['properties'];

type Visit = (schema: unknown) => unknown;

/** The schema with each schema right inside it put through `visit`. */
function inside(schema: JsonSchema, visit: Visit): JsonSchema {
  const entries = Object.entries(schema).map(([key, value]): [string, unknown] => {
    if (oneSchema.includes(key)) return [key, visit(value)];
    if (listOfSchemas.includes(key) && Array.isArray(value)) return [key, value.map(visit)];
    if (mapOfSchemas.includes(key) && isMapping(value)) {
      return [key, Object.fromEntries(Object.entries(value).map(([name, each]) => [name, visit(each)]))];
    }
    return [key, value];
  });
  return Object.fromEntries(entries);
}

function isMapping(value: unknown): value is JsonSchema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The same schema with what it says more than once said once, under `$defs`, and referred to. */
export function sharedSchema(whole: JsonSchema): JsonSchema {
  const times = new Map<string, number>();
  const count: Visit = (schema) => {
    if (!isMapping(schema)) return schema;
    const text = JSON.stringify(schema);
    const known = times.get(text) ?? 0;
    times.set(text, known + 1);
    // What stands in a repeated schema was counted with its first.
    return known === 0 ? inside(schema, count) : schema;
  };
  inside(whole, count);
  const names = new Map<string, string>();
  const definitions: Record<string, JsonSchema> = {};
  const share: Visit = (schema) => {
    if (!isMapping(schema)) return schema;
    const text = JSON.stringify(schema);
    if ((times.get(text) ?? 0) < 2 || text.length < worthSharing) return inside(schema, share);
    let name = names.get(text);
    if (name === undefined) {
      name = free(nameOf(schema), definitions);
      names.set(text, name);
      definitions[name] = {};
      definitions[name] = inside(schema, share);
    }
    return { $ref: `#/$defs/${name}` };
  };
  const shared = inside(whole, share);
  return Object.keys(definitions).length === 0 ? shared : { ...shared, $defs: definitions };
}

/** `Highest temperature of the surface (…)` as `highest-temperature-of-the-surface`. */
function nameOf({ description, type }: JsonSchema): string {
  const text = typeof description === 'string' ? description.split(/[(:;,.]/)[0]! : String(type ?? 'schema');
  const name = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return name.split('-').slice(0, 8).join('-') || 'schema';
}

function free(name: string, taken: Readonly<Record<string, unknown>>): string {
  if (!(name in taken)) return name;
  let number = 2;
  while (`${name}-${number}` in taken) number++;
  return `${name}-${number}`;
}
