import { parse } from 'yaml';

/** A machine as its file writes it, every value the text that was typed; nothing where there is no such machine. */
export function writtenMachine(text: string, name: string): unknown {
  const file: unknown = parse(text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' });
  const machines = at(file, 'machines');
  return at(machines, name);
}

/** What stands there, along the keys. */
export function writtenAt(written: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce(at, written);
}

function at(value: unknown, key: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Readonly<Record<string | number, unknown>>)[key];
}
