import { readdirSync, readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { root } from './reading.ts';

/** A formula without its formula and units is read with the wrong ones. */
const folders = [
  'packages/core/src/chain/formulas',
  'packages/core/src/machine',
  'packages/core/src/signal',
  'packages/core/src/uncertainty',
];

/** In the machine room the formulas stand in the files of frequencies; the rest solves trains. */
const isFormulaFile = (path: string) => !path.includes('/machine/') || /-frequencies\.ts$/.test(path);

function filesIn(path: string): readonly string[] {
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) => {
    const inner = resolve(path, entry.name);
    if (entry.isDirectory()) return filesIn(inner);
    return /(?<!\.test|evidence|index|kinds)\.ts$/.test(entry.name) ? [inner] : [];
  });
}

interface Exported {
  readonly at: string;
  /** The type it returns. */
  readonly gives: string;
  readonly docstring: string;
}

/** Exported functions, each with the comment before it. */
const exported: readonly Exported[] = folders
  .flatMap((folder) => filesIn(resolve(root, folder)))
  .filter(isFormulaFile)
  .flatMap((path) => {
    const text = readFileSync(path, 'utf8');
    return [...text.matchAll(/^export function (\w+)[\s\S]*?\): ([^{]+) \{$/gm)].map((match) => {
      const before = text.slice(0, match.index);
      const docstring = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*$/.exec(before)?.[1] ?? '';
      return {
        at: `${relative(root, path)}: ${match[1]}`,
        gives: match[2]!.trim(),
        docstring: docstring.replace(/\s*\*\s*/g, ' '),
      };
    });
  });

test('every exported function of a formula file has a docstring', () => {
  expect(exported.length).toBeGreaterThan(80);
  expect(exported.filter(({ docstring }) => docstring.trim() === '').map(({ at }) => at)).toEqual([]);
});

/** What computes a number; what gives text, a record or nothing need not say a formula. */
const isNumber = /\b(number|Complex|Float64Array|Level|Quantity|Vector)\b/;
/** Signs of a formula, or words that say what the number is of. */
const saysWhat =
  /[=√·×²³⁻π±−≤≥∑Σ/^|+]|\b(hertz|Hz|mA|unit|seconds?|metres?|volts?|amperes?|ohms?|farads?|radians?|degrees|decibels?|dB|kelvins?|fraction|share|ratio|rms|peak|squares?|root|mean|probability|deviation|density|times|sum|number of|count|bins?|turns?|lines|places|SI)\b/i;

test('every exported function that gives a number says its formula, or in which unit it is', () => {
  const silent = exported.filter(
    ({ gives, docstring }) => isNumber.test(gives) && !gives.includes('=>') && !saysWhat.test(docstring),
  );
  expect(silent.map(({ at, docstring }) => `${at}: ${docstring}`)).toEqual([]);
});
