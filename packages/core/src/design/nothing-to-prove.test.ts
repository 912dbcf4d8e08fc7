import { expect, test } from 'vitest';
import { usualPolicy } from '../demand/policy.ts';
import { design } from './design.ts';
import type { Plant } from './plant.ts';

const empty = {
  title: { of: 'plant', values: { name: { known: true, value: 'A plant', written: 'A plant' } } },
  policy: usualPolicy,
  allowances: { of: 'allowances', values: {} },
  catalogue: { title: 'none', transducers: [], mounts: [], cables: [], supplies: [], inputs: [] },
  machines: [],
} as unknown as Plant;

test('negative: a plant that asks for nothing is not proven by that', () => {
  const { verdict, findings } = design(empty, 1);
  expect(verdict).toBe('open questions');
  expect(findings.map((each) => each.rule)).toEqual(['design/nothing-to-prove']);
});
