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

/** The raw-water pump so many times over, as `P-1` and on. */
export function manyPumps(count: number): string {
  const text = examplePlant('raw-water-pump');
  const at = text.indexOf('  P-301:\n');
  const machine = text.slice(at);
  const machines = Array.from({ length: count }, (_, index) => machine.replace('  P-301:', `  P-${index + 1}:`));
  return text.slice(0, at) + machines.map((each) => `${each.trimEnd()}\n`).join('');
}
