import { designDifference } from '@soundpost/core';
import { expect, test } from 'vitest';
import { plantOf } from '../plant/stated-texts.ts';
import { fileOf, pump } from '../testing/house.ts';
import { redesigning } from './redesigned.ts';

const catalogue = fileOf('packages/files/catalogues/generic.yaml');
const plantFrom = (plant: string, generic = catalogue) =>
  plantOf({ from: 'plant.yaml', plant, catalogues: new Map([['generic', generic]]) });
const [head, tail] = catalogue.split('LPV-25:');

const edits: readonly (readonly [string, string, string])[] = [
  ['a length', pump({ 'value: 85 m': 'value: 86 m' }), catalogue],
  ['the title of the machine', pump({ 'title: Raw-water pump': 'title: Other pump' }), catalogue],
  ['the policy', pump({ 'headroom: 3 dB': 'headroom: 6 dB' }), catalogue],
  ['an allowance', pump({ 'value: 1.5 %': 'value: 2.5 %' }), catalogue],
  ['a limit of the machine', pump({ 'b-c: 5.1': 'b-c: 5.2' }), catalogue],
  [
    'a part of the catalogue',
    pump(),
    `${head}LPV-25:${tail!.replace(/range: [^\n]+/, 'range: 50 mm/s rms 10-1000 Hz')}`,
  ],
];

test.each(edits)(
  'law: after %s changed, what is worked out anew beside what is kept is what all of it anew is',
  (_, text, generic) => {
    const again = redesigning();
    const before = again(plantFrom(pump()));
    const kept = again(plantFrom(text, generic));
    const fresh = redesigning()(plantFrom(text, generic));
    expect(kept.sheets).toEqual(fresh.sheets);
    expect(kept.sheets).not.toEqual(before.sheets);
    expect(designDifference(kept.design, fresh.design).changes).toEqual([]);
    expect(designDifference(before.design, kept.design)).toEqual(designDifference(before.design, fresh.design));
  },
);
