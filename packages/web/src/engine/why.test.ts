import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { design } from '@soundpost/core';
import { expect, test } from 'vitest';
import { formulaPiece } from '../parts/formula-parser.ts';
import { plantFrom } from './read-plant.ts';
import { why } from './why.ts';

const root = resolve(import.meta.dirname, '../../../..');
const textAt = (path: string) => readFileSync(resolve(root, path), 'utf8');
const generic = { path: 'generic.yaml', text: textAt('packages/files/catalogues/generic.yaml') };
const plantPath = 'examples/raw-water-pump/plant.yaml';
const plant = plantFrom(textAt(plantPath), plantPath, { generic });
const points = design(plant, 1).machines.flatMap((machine) => machine.points);

test('law: every judgement of the demo has its reason, and every formula of it is read as a formula', () => {
  for (const { appraisal } of points) {
    for (const { rule, target } of appraisal?.judgements ?? []) {
      const told = why(appraisal!, rule, target, plant.policy, {});
      expect(told.length, rule).toBeGreaterThan(0);
      for (const { sentence, numbers, steps } of told) {
        expect(sentence.length).toBeGreaterThan(10);
        expect(numbers.map((each) => each.name)).toContain('limit');
        for (const { formula, substituted } of steps) {
          for (const each of [formula, ...(substituted === undefined ? [] : [substituted])]) {
            expect(formulaPiece(each), each).toBeDefined();
          }
        }
      }
    }
  }
  expect(points.length).toBeGreaterThan(1);
});

test('what is not judged has no reason', () => {
  const { appraisal } = points.find((each) => each.appraisal !== undefined)!;
  expect(why(appraisal!, 'chain/overload', 'no such target', plant.policy, {})).toEqual([]);
});
