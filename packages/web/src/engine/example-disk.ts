import { readFileSync } from 'node:fs';
import type { PlantOnDisk } from '@soundpost/server/protocol';

const root = new URL('../../../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');

export const exampleNames = [
  'raw-water-pump',
  'kiln-support-roller',
  'turbo-compressor',
  'vibrating-screen',
  'hydrogen-compressor',
  'wind-turbine',
] as const;

/** An example plant as the server would give it; for tests. */
export function exampleDisk(name: string): Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'> {
  const generic = 'packages/files/catalogues/generic.yaml';
  return {
    path: `examples/${name}/plant.yaml`,
    text: text(`examples/${name}/plant.yaml`),
    catalogues: { generic: { path: generic, text: text(generic) } },
  };
}
