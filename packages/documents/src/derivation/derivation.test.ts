import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { demand, frequencyTable, lineLookup, reason, shortlist } from '@soundpost/core';
import { catalogueReader, plantReader, readYaml } from '@soundpost/files';
import { expect, test } from 'vitest';
import { gives } from './derivation.ts';
import { derivationOf, derivations } from './derivations.ts';

const root = resolve(import.meta.dirname, '../../../..');
const bytesOf = (path: string) => readFileSync(resolve(root, path));
const generic = readYaml(bytesOf('packages/files/catalogues/generic.yaml'), 'generic.yaml', catalogueReader).value;
const plantPath = 'examples/raw-water-pump/plant.yaml';
const plant = readYaml(
  bytesOf(plantPath),
  plantPath,
  plantReader(() => generic),
).value;

test.each(['pump-drive-end-horizontal', 'pump-drive-end-loop'])(
  'law: for every part of the catalogue at %s each verdict has its formula, and no number in it is lost',
  (name) => {
    const machine = plant.machines.find((each) => each.points.some((point) => point.statement.name === name))!;
    const stated = machine.points.find((point) => point.statement.name === name)!;
    const point = demand(stated.statement, machine.name, lineLookup(frequencyTable(machine.train)));
    const { transducers, mounts } = plant.catalogue;
    const spoken = new Set<string>();
    for (const { appraisal } of shortlist(point, transducers, mounts, stated.way!, plant.policy)) {
      for (const judgement of appraisal.judgements) {
        const target = point.targets.find((each) => each.name === judgement.target);
        const { prediction } = appraisal;
        const found = derivationOf({ point, prediction, policy: plant.policy, judgement, target, showing: {} });
        const text = JSON.stringify(found);
        expect(found.length, reason(judgement)).toBeGreaterThan(0);
        expect(text, reason(judgement)).not.toMatch(/NaN|undefined|Infinity/);
        if (found.some((each) => each.substituted !== undefined)) spoken.add(judgement.rule);
      }
    }
    for (const rule of spoken) expect(Object.keys(derivations)).toContain(rule);
    expect(spoken.size).toBeGreaterThan(3);
  },
);

test('a formula that does not give what was found is not shown', () => {
  expect(gives(8, 8 * (1 + 1e-12))).toBe(true);
  expect(gives(8, 8.001)).toBe(false);
  expect(gives(0, 0)).toBe(true);
});
