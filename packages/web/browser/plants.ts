import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { applyEdits } from '@soundpost/files';

const examples = resolve(import.meta.dirname, '../../../examples');

/** The text of an example plant. */
export function examplePlant(name: string): string {
  return readFileSync(join(examples, name, 'plant.yaml'), 'utf8');
}

/** The raw-water pump with its points as they stand, and nothing chosen at some of them. */
export function pumpWithoutChains(...points: readonly string[]): string {
  const at = (point: string) => ({ path: ['machines', 'P-301', 'points', point, 'chain'], yaml: undefined });
  return applyEdits(examplePlant('raw-water-pump'), points.map(at)).text;
}

export const horizontal = '/point/P-301/pump-drive-end-horizontal';
export const loop = '/point/P-301/pump-drive-end-loop';
