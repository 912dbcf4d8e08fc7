import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { root } from '../reading.ts';
import { aroundKey, type KeyPath, keysOf, type Said, saidOf, without } from './mutation.ts';
import { notYetAsked, silentOnPurpose } from './silent-keys.ts';

/** A plant file in which nothing is left open; one after another, each of its keys is taken out. */
const text = readFileSync(resolve(root, 'examples/solvent-recovery/plant.yaml'), 'utf8');
const exceptions = [...silentOnPurpose, ...notYetAsked].flatMap(({ keys }) => keys);
const patterns = exceptions.map(
  (pattern) => [pattern, new RegExp(`^${pattern.replace('**/', '(?:.+/)').replace(/(?<!\))\*/g, '[^/]*')}$`)] as const,
);
const excused = (path: KeyPath) => patterns.filter(([, each]) => each.test(path.join('/'))).map(([pattern]) => pattern);

/** Origins of values stand at every other key: the first of each excuses the rest. */
const origin = new Set<string>();
const looked = keysOf(text).filter((path) => {
  const last = String(path.at(-1));
  if (last !== 'source' && last !== 'status') return true;
  if (origin.has(last)) return false;
  origin.add(last);
  return true;
});

interface Removal {
  readonly path: KeyPath;
  readonly said: Said;
}

let removals: readonly Removal[] = [];
const before = new Map<string, ReadonlySet<string>>();

beforeAll(() => {
  removals = looked.map((path) => {
    const around = aroundKey(text, path);
    if (!before.has(around)) before.set(around, new Set(saidOf(around).sentences));
    const old = before.get(around)!;
    const { refused, sentences } = saidOf(without(around, path));
    return { path, said: { refused, sentences: sentences.filter((each) => !old.has(each)) } };
  });
}, 300_000);

test('the plant the keys are taken from lacks nothing', () => {
  expect(saidOf(text)).toEqual({ refused: false, sentences: [] });
  expect(removals.length).toBeGreaterThan(400);
});

test('mutation: each key taken out is refused, found or asked about, or stands on the list of exceptions', () => {
  const silent = removals.filter(({ path, said }) => said.sentences.length === 0 && excused(path).length === 0);
  expect(silent.map(({ path }) => path.join('/'))).toEqual([]);
});

const plain = (words: unknown) => String(words).toLowerCase().replaceAll('-', ' ');
const everywhere = new Set(['machines', 'points', 'parts']);

test('mutation: what is then said names a place on the way to the key, or something that was in it', () => {
  const elsewhere = removals.filter(({ path, said }) => {
    const within = looked.filter((each) => path.every((key, index) => each[index] === key)).flat();
    const names = [...path, ...within].map(plain).filter((name) => path.length === 1 || !everywhere.has(name));
    const words = plain(said.sentences.join(' '));
    return said.sentences.length > 0 && !names.some((name) => words.includes(name));
  });
  expect(elsewhere.map(({ path, said }) => `${path.join('/')}: ${said.sentences[0]}`)).toEqual([]);
});

test('law: the list of exceptions only shrinks: each of them excuses a key that is silent', () => {
  const used = new Set(removals.flatMap(({ path, said }) => (said.sentences.length === 0 ? excused(path) : [])));
  expect(exceptions.filter((each) => !used.has(each))).toEqual([]);
  expect(notYetAsked.flatMap(({ keys }) => keys).length).toBeLessThanOrEqual(13);
});
