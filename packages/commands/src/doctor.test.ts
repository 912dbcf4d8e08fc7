import { workings } from '@soundpost/core';
import { expect, test } from 'vitest';
import { doctor } from './doctor.ts';
import { inMemory } from './in-memory.ts';
import { done, flowing, world } from './testing/house.ts';

test('where everything is here the doctor says what, and ends with 0', async () => {
  const outcome = await done(doctor, {});
  expect(outcome.exit).toBe(0);
  expect(flowing(outcome)).toContain('✓ Node.js: v20.19.0');
  expect(flowing(outcome)).toContain('✓ demo plant: one machine, 2 points');
  expect(flowing(outcome)).toContain('· ngspice: not here: wanted only to make the stored evidence again');
});

test('an old Node.js, a folder that may not be written, a broken catalogue: each is wrong and says what to do', async () => {
  const old = await done(doctor, {}, { ...world(), nodeVersion: 'v18.20.4' });
  expect(old.exit).toBe(1);
  expect(flowing(old)).toContain('✗ Node.js: v18.20.4: install Node.js 20.19 or newer');
  const locked = await done(doctor, {}, { ...world(), canWrite: async () => false });
  expect(flowing(locked)).toContain('✗ this folder: may not be written');
  const bare = await done(doctor, {}, inMemory({}));
  expect(bare.exit).toBe(1);
  expect(flowing(bare)).toContain('✗ generic catalogue');
});

test('a tool that runs is shown with its version', async () => {
  const firstLineOf = async (program: string) =>
    program === 'ngspice' ? '** ngspice-39.3 : Circuit level' : undefined;
  expect(flowing(await done(doctor, {}, { ...world(), firstLineOf }))).toContain('✓ ngspice: 39.3');
});

test('completeness: each working, rule and kind is shown with what holds it, and what lacks it is named', async () => {
  const outcome = await done(doctor, { evidence: true });
  const { subjects, lacking } = outcome.json as { subjects: string[]; lacking: string[] };
  expect(subjects).toEqual(expect.arrayContaining(workings.map((each) => `working ${each.name}`)));
  expect(subjects).toContain('rule chain/overload');
  expect(subjects).toContain('transducer iepe-accelerometer');
  const shown = flowing(outcome);
  for (const group of new Set(subjects.map((each) => each.slice(0, each.lastIndexOf(' '))))) {
    const count = subjects.filter((each) => each.slice(0, each.lastIndexOf(' ')) === group).length;
    expect(shown.toLowerCase()).toMatch(new RegExp(`${group}: \\d+ of ${count} held against something`));
  }
  for (const subject of lacking) expect(shown).toContain(subject);
});
