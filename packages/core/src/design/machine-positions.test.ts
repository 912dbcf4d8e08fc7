import { expect, test } from 'vitest';
import { examplePlant } from '../../../../evidence/reading.ts';
import { machinePositions } from './machine-positions.ts';

test('law: every advice is of all machines or of an element the machine has, each once', () => {
  const { train } = examplePlant('raw-water-pump').machines[0]!;
  const kinds = new Set(train.elements.map(({ kind }) => kind));
  const found = machinePositions(train);
  for (const { name, elements } of found) {
    expect(elements?.some((kind) => kinds.has(kind)) ?? true, name).toBe(true);
  }
  expect(new Set(found.map(({ name }) => name)).size).toBe(found.length);
  expect(found.map(({ name }) => name)).toContain('rolling-bearing-load-zone');
  expect(machinePositions({ ...train, elements: [] }).length).toBeLessThan(found.length);
});
