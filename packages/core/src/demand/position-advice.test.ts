import { expect, test } from 'vitest';
import { machineElementKinds } from '../machine/kinds.ts';
import { sources } from '../source/sources.ts';
import { positionAdvice, positionAdviceFor } from './position-advice.ts';

test('every kind of element has advice of its own, and each advice a known source and a name of its own', () => {
  const general = positionAdviceFor([]);
  for (const { kind } of machineElementKinds) {
    expect(positionAdviceFor([kind]).length, kind).toBeGreaterThan(general.length);
  }
  expect(new Set(positionAdvice.map(({ name }) => name)).size).toBe(positionAdvice.length);
  for (const each of positionAdvice) {
    expect(each.sources.length, each.name).toBeGreaterThan(0);
    for (const { source } of each.sources) expect(sources).toContain(source);
  }
});

test('no advice is called read: each is from memory or practice without a source, and says so', () => {
  const ways = positionAdvice.flatMap(({ sources: cited }) => cited.map((each) => each.how ?? each.source.how));
  expect([...new Set(ways)].sort()).toEqual(['common practice, no source', 'from memory']);
});

test('ISO 20816-1 (from memory): bearing housings, two radial at a right angle, axial at the thrust bearing', () => {
  const ofStandard = positionAdvice.filter(({ sources: cited }) =>
    cited.some(({ source }) => source.id === 'iso-20816-1'),
  );
  expect(ofStandard.map(({ name }) => name)).toEqual(['bearing-housings', 'axial-at-thrust-bearing']);
  expect(ofStandard[0]!.directions).toMatch(/two radial/);
});

test('advice for a pump on rolling bearings leaves out what it has not', () => {
  const names = positionAdviceFor(['induction-motor', 'rolling-bearing', 'impeller', 'coupling']).map(
    ({ name }) => name,
  );
  expect(names).toContain('rolling-bearing-load-zone');
  expect(names).not.toContain('crosshead');
  expect(names[0]).toBe('bearing-housings');
});
