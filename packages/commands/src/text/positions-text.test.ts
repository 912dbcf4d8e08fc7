import { expect, test } from 'vitest';
import { demand } from '../demand.ts';
import { prove } from '../prove.ts';
import { done, flowing, pump, pumpPath, world } from '../testing/house.ts';

test('where to measure is told of a machine with how it is known, and called advice', async () => {
  const outcome = await done(demand, { plant: pumpPath });
  const shown = flowing(outcome);
  expect(shown).toContain('Where to measure (advice, not a limit)');
  expect(shown).toContain('measuring positions (from memory)');
  const { machines } = outcome.json as { machines: readonly { positions: readonly { name: string }[] }[] };
  const names = machines[0]!.positions.map(({ name }) => name);
  expect(names).toContain('rolling-bearing-load-zone');
  expect(names).not.toContain('crosshead');
});

test('the life of a mated connector is told where it is washed down, as a range without a source, and not where nothing is stated', async () => {
  const wet = pump({
    'surface-temperature: { value: 65 °C, status: measured, source: infrared reading }':
      'surface-temperature: { value: 65 °C, status: measured, source: infrared reading }\n        surroundings: { exposure: washed down }',
  });
  const outcome = await done(prove, { plant: 'wet.yaml' }, world({ 'wet.yaml': wet }));
  expect(flowing(outcome)).toContain('mated connector, 3 to 18 months (common practice, no source)');
  const { machines } = outcome.json as {
    machines: readonly { points: readonly { life: readonly Readonly<Record<string, unknown>>[] }[] }[];
  };
  const [first, second] = machines[0]!.points;
  expect(first!.life).toMatchObject([{ applies: true, life: { low: { unit: 's' }, high: { unit: 's' } } }]);
  expect(second!.life).toEqual([]);
});
