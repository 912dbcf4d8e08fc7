import { expect, test } from 'vitest';
import { readYaml } from './read-yaml.ts';
import { bytesOf, refused } from './refused.ts';
import { tedsLayoutReader } from './teds-layout-file.ts';

const read = (text: string) => readYaml(bytesOf(text), 'layout.yaml', tedsLayoutReader);

const head = `soundpost: teds-layout
version: 1
title: Invented microphone
edition: invented for this test
template: 27
fields:
`;
const invented = `${head}  - { name: kind, bits: 1, coding: enumeration, words: [free field, pressure] }
  - name: sensitivity
    bits: 16
    coding: constant-relative-resolution
    start: 1e-6
    tolerance: 0.02 %
    unit: V/Pa
  - { name: depth, bits: 5, coding: constant-resolution, start: -3, step: 0.5, only-where: { field: kind, code: 1 } }
`;

test('a layout is read as it was copied down: a tolerance of 0.02 % is the ratio 0.0002', () => {
  const { value } = read(invented);
  expect(value).toEqual({
    title: 'Invented microphone',
    edition: 'invented for this test',
    templateId: 27,
    fields: [
      { name: 'kind', bits: 1, coding: 'enumeration', words: ['free field', 'pressure'] },
      {
        name: 'sensitivity',
        bits: 16,
        coding: 'constant-relative-resolution',
        start: 1e-6,
        tolerance: expect.closeTo(0.0002, 12),
        unit: 'V/Pa',
      },
      {
        name: 'depth',
        bits: 5,
        coding: 'constant-resolution',
        start: -3,
        step: 0.5,
        onlyWhere: { field: 'kind', code: 1 },
      },
    ],
  });
});

test('a file that declares comma decimals writes its numbers so', () => {
  const { value } = read(
    invented
      .replace('version: 1', 'version: 1\ndecimals: comma')
      .replace('0.02 %', '0,02 %')
      .replace('step: 0.5', "step: '0,5'"),
  );
  expect(value.fields[1]!.tolerance).toBeCloseTo(0.0002, 12);
  expect(value.fields[2]!.step).toBe(0.5);
});

const said = (text: string) =>
  refused(() => read(text)).refusals.map(({ line, column, expected }) => `${line}:${column} ${expected}`);

test('negative: each fault is refused at its place, all of them together', () => {
  const text = `${head}  - { name: a, bits: 8, coding: unsigned, start: 3 }
  - { name: b, bits: 12, coding: single }
  - { name: c, bits: 8, coding: constant-resolution, start: 0 }
  - { name: d, bits: 8, coding: sometimes }
`;
  const all = said(text);
  expect(all).toHaveLength(4);
  expect(all[0]).toMatch(/^7:5 no 'start' for the coding 'unsigned'/);
  expect(all[1]).toMatch(/^8:5 32 bits for the coding 'single'/);
  expect(all[2]).toMatch(/^9:5 'step' or 'tolerance'/);
  expect(all[3]).toMatch(/^10:33 one of: unsigned, enumeration/);
});

test('negative: what contradicts an earlier field is refused at the later one', () => {
  const all = said(`${head}  - { name: a, bits: 1, coding: unsigned }
  - { name: a, bits: 8, coding: unsigned }
  - { name: c, bits: 8, coding: unsigned, only-where: { field: later, code: 1 } }
`);
  expect(all[0]).toMatch(/^8:5 each name once/);
  expect(all[1]).toMatch(/^9:5 the name of a field that stands before 'c'/);
});

test('negative: a layout without its edition, without fields, or of no standard template is none', () => {
  expect(said(invented.replace(/edition:.*\n/, '')).join()).toMatch(/'edition' in a TEDS layout file/);
  expect(said(invented.replace('template: 27', 'template: 12'))).toEqual([expect.stringMatching(/^5:11 .*25 to 42/)]);
  expect(said(head.replace('fields:\n', 'fields: []\n'))).toEqual([expect.stringMatching(/^6:9 at least 1/)]);
});
