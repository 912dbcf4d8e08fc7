import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { wording } from '../../finding/finding.ts';
import { showMeasure } from '../../finding/measure.ts';
import { sources } from '../../source/sources.ts';
import { trainFindings } from '../findings.ts';
import { readTrain } from '../reading.ts';
import { machineRules } from './rules.ts';

for (const rule of machineRules) {
  test(`${rule.id}: one train passes it and one does not`, () => {
    const passes = trainFindings(readTrain(rule.valid)).map((each) => each.rule);
    const fails = trainFindings(readTrain(rule.invalid)).filter((each) => each.rule === rule.id);
    expect(passes).not.toContain(rule.id);
    expect(fails).toHaveLength(1);
    const [found] = fails;
    expect(wording(found!)).not.toMatch(/NaN|undefined|Infinity/);
    if (found!.weight === 'question') expect(showMeasure(found!.asks ?? '')).toMatch(/\?$/);
    expect(found!.sources.length).toBeGreaterThan(0);
    for (const { source } of found!.sources) expect(sources).toContain(source);
  });
}

test('every rule stands once in the list, and every rule file is in it', () => {
  const ids = machineRules.map((rule) => rule.id);
  expect(new Set(ids).size).toBe(ids.length);
  const files = readdirSync(new URL('.', import.meta.url))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .filter((file) => !['rule.ts', 'rules.ts', 'train-rule.ts', 'example-trains.ts'].includes(file))
    .map((file) => `machine/${file.replace(/\.ts$/, '')}`);
  expect([...ids].sort()).toEqual(files.sort());
});
