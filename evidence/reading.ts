import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import type { Answer, Catalogue, Plant } from '../packages/core/src/index.ts';
import { catalogueReader, plantReader, readYaml } from '../packages/files/src/index.ts';

export const root = resolve(import.meta.dirname, '..');

/** The generic catalogue that ships. */
export function genericCatalogue(): Catalogue {
  const path = resolve(root, 'packages/files/catalogues/generic.yaml');
  return readYaml(readFileSync(path), 'generic.yaml', catalogueReader).value;
}

/** A plant of the examples, with the generic catalogue. */
export function examplePlant(folder: string): Plant {
  const path = resolve(root, 'examples', folder, 'plant.yaml');
  return plantOf(readFileSync(path, 'utf8'), `${folder}/plant.yaml`);
}

export function plantOf(text: string, name = 'plant.yaml'): Plant {
  const generic = genericCatalogue();
  return readYaml(
    new TextEncoder().encode(text),
    name,
    plantReader(() => generic),
  ).value;
}

export interface ExpectedAnswer {
  readonly id: string;
  readonly value: number | string | boolean;
  readonly unit: string;
  readonly tol: number;
  readonly tol_kind: 'rel_pct' | 'abs' | 'exact';
}

/** A reference plant's file in the folder beside the project, where it was laid; otherwise nothing. */
export function besideProject(path: string): string | undefined {
  const file = resolve(root, '..', 'shared', path);
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}

/** Whether an answer lies within the stated tolerance of what was expected. */
export function within(expected: ExpectedAnswer, found: Found): boolean {
  if (expected.tol_kind === 'exact' || typeof expected.value !== 'number' || typeof found !== 'number') {
    return found === expected.value;
  }
  const width = expected.tol_kind === 'abs' ? expected.tol : (Math.abs(expected.value) * expected.tol) / 100;
  return Math.abs(found - expected.value) <= width * (1 + 1e-9) + 1e-12;
}

/** What is known, or a test that fails and says what was missing. */
export function known<T>(answer: Answer<T> | undefined): T {
  if (answer === undefined || !answer.known) throw new Error(`not known: ${JSON.stringify(answer)}`);
  return answer.value;
}

type Found = number | string | boolean;
/** Our answers to the ids of a reference plant, by the shape of the id; the first that fits speaks. */
export type AnswersById = readonly (readonly [RegExp, (match: RegExpExecArray) => Found])[];

/**
 * Independent: one test for each answer stored in the plant's folder, which are those of the plant's author, who used
 * other code and a second derivation; and one that they are what the author's own file holds, where it lies beside.
 */
export function heldAgainstReference(folder: string, reference: string, answers: AnswersById): void {
  const stored = answersIn(readFileSync(resolve(root, 'evidence', folder, 'expected.json'), 'utf8'));

  test.each(stored.map((each) => [each.id, each] as const))('independent: %s', (id, expected) => {
    const found = answerTo(id, answers);
    expect(within(expected, found), `expected ${expected.value} ${expected.unit}, found ${found}`).toBe(true);
  });

  test('independent: the stored answers are those of the reference plant', ({ skip }) => {
    const text = besideProject(`scenarios/${reference}.expected.json`);
    if (text === undefined) return skip('the folder with the reference plants is not beside the project');
    expect(stored).toEqual(answersIn(text));
  });
}

function answersIn(text: string): readonly ExpectedAnswer[] {
  return (JSON.parse(text) as { expected: readonly ExpectedAnswer[] }).expected;
}

function answerTo(id: string, answers: AnswersById): Found {
  for (const [pattern, answer] of answers) {
    const match = pattern.exec(id);
    if (match !== null) return answer(match);
  }
  throw new Error(`no answer is given to ${id}`);
}
