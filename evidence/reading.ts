import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Catalogue, Plant } from '../packages/core/src/index.ts';
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
export function within(expected: ExpectedAnswer, found: number | string | boolean): boolean {
  if (expected.tol_kind === 'exact' || typeof expected.value !== 'number' || typeof found !== 'number') {
    return found === expected.value;
  }
  const width = expected.tol_kind === 'abs' ? expected.tol : (Math.abs(expected.value) * expected.tol) / 100;
  return Math.abs(found - expected.value) <= width * (1 + 1e-9) + 1e-12;
}
