import { readdirSync, readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import * as core from '../packages/core/src/index.ts';
import { root } from './reading.ts';

/** Who says so: every source of the list is cited, and nothing is cited that is not in the list. */
const folder = resolve(root, 'packages/core/src');

function filesIn(path: string): readonly string[] {
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) => {
    const inner = resolve(path, entry.name);
    if (entry.isDirectory()) return filesIn(inner);
    return entry.name.endsWith('.ts') ? [inner] : [];
  });
}

const files = filesIn(folder).map((path) => ({ path: relative(folder, path), text: readFileSync(path, 'utf8') }));

/** Name of the constant and of its file for each source. */
const defined = files
  .filter(({ path }) => path.startsWith('source/'))
  .flatMap(({ path, text }) =>
    [...text.matchAll(/export const (\w+)(?:: Source)? = source\(/g)].map((match) => ({ name: match[1]!, path })),
  );

const byName = core as unknown as Readonly<Record<string, unknown>>;

test('every source has a file of its own, stands in the list once, and says how it is known', () => {
  expect(new Set(defined.map(({ path }) => path)).size).toBe(defined.length);
  expect(defined.map(({ name }) => byName[name])).toEqual(expect.arrayContaining([...core.sources]));
  expect(defined.filter(({ name }) => !core.sources.includes(byName[name] as core.Source))).toEqual([]);
  expect(new Set(core.sources.map(({ id }) => id)).size).toBe(core.sources.length);
  for (const { id, title, note, how } of core.sources) {
    expect(title.length, id).toBeGreaterThan(5);
    expect(note.length, id).toBeGreaterThan(5);
    expect(how, id).not.toBe('');
  }
});

test('every source of the list is cited by a formula, a rule, a kind, a table or a number it printed', () => {
  const citing = files.filter(({ path }) => !path.startsWith('source/'));
  const used = (name: string) => citing.some(({ text }) => new RegExp(`clause\\(\\s*${name}\\b`).test(text));
  expect(defined.filter(({ name }) => !used(name)).map(({ path }) => path)).toEqual([]);
});

/** Every clause that is to be reached from a list of the core. */
function clausesIn(value: unknown, seen = new Set<unknown>()): readonly core.Clause[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  const inner = Object.values(value).flatMap((each) => clausesIn(each, seen));
  const cited = 'source' in value ? (value.source as unknown) : undefined;
  const isClause = typeof cited === 'object' && cited !== null && 'how' in cited && 'note' in cited;
  return isClause ? [value as core.Clause, ...inner] : inner;
}

test('every clause of every list leads to a source of the list', () => {
  const lists = Object.values(core).filter((each) => Array.isArray(each));
  const clauses = clausesIn(lists);
  expect(clauses.length).toBeGreaterThan(100);
  const strangers = clauses.filter(({ source }) => !core.sources.includes(source));
  expect([...new Set(strangers.map(({ source }) => source.id))]).toEqual([]);
});
