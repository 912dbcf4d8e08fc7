import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { InMemory } from '../in-memory.ts';
import { checkout, fileOf, world } from './house.ts';

export const acceptancePlant = 'examples/acceptance/plant.yaml';
export const acceptanceRecords = 'examples/acceptance/records.yaml';

/** A world with the acceptance example: plant, records file and every recording; and whatever else is given. */
export function acceptanceWorld(more: Readonly<Record<string, string | Uint8Array>> = {}): InMemory {
  const folder = resolve(checkout, 'examples/acceptance/records');
  const records = Object.fromEntries(
    readdirSync(folder).map((name) => [
      `examples/acceptance/records/${name}`,
      new Uint8Array(readFileSync(resolve(folder, name))),
    ]),
  );
  return world({
    [acceptancePlant]: fileOf(acceptancePlant),
    [acceptanceRecords]: fileOf(acceptanceRecords),
    ...records,
    ...more,
  });
}
