import { expect, test } from 'vitest';
import { inMemory } from './in-memory.ts';
import { manner } from './manner.ts';
import { performed } from './performed.ts';
import { serve } from './serve.ts';
import type { WantedWorkbench } from './surroundings.ts';

const demo = 'house/examples/raw-water-pump/plant.yaml';

function served(files: Record<string, string>, given: { plant?: string; port?: string }) {
  const wanted: WantedWorkbench[] = [];
  const world = inMemory(files, {
    workbench: async (each) => {
      wanted.push(each);
    },
  });
  return performed(serve, world, given, manner()).then((outcome) => ({ outcome, wanted, files: world.files }));
}

test('a plant is served on any free port, or on the one that is named', async () => {
  const { outcome, wanted } = await served({ 'plant.yaml': '' }, { plant: 'plant.yaml' });
  expect(outcome).toMatchObject({ exit: 0, json: { plant: 'plant.yaml' } });
  expect(wanted).toEqual([
    {
      plant: 'plant.yaml',
      port: 0,
      genericCatalogue: 'house/packages/files/catalogues/generic.yaml',
      page: 'house/packages/web/dist',
    },
  ]);
  expect((await served({}, { plant: 'plant.yaml', port: '8080' })).wanted[0]?.port).toBe(8080);
});

test.each(['0', '65536', '80a', '-1', ''])('a port of %j is refused', async (port) => {
  const { outcome, wanted } = await served({}, { plant: 'plant.yaml', port });
  expect(outcome.exit).toBe(2);
  expect(wanted).toEqual([]);
});

test('without a plant a copy of the demo is served, and one that was worked on is left as it is', async () => {
  const { wanted, files } = await served({ [demo]: 'demo\n' }, {});
  expect(wanted[0]?.plant).toBe('out/raw-water-pump/plant.yaml');
  expect(new TextDecoder().decode(files.get('out/raw-water-pump/plant.yaml'))).toBe('demo\n');
  const again = await served({ [demo]: 'demo\n', 'out/raw-water-pump/plant.yaml': 'worked on\n' }, {});
  expect(new TextDecoder().decode(again.files.get('out/raw-water-pump/plant.yaml'))).toBe('worked on\n');
});
