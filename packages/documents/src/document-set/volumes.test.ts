import fc from 'fast-check';
import { expect, test } from 'vitest';
import { madeSheet } from './made-sheet.ts';
import type { DocumentRecord } from './record.ts';
import { volumesOf } from './volumes.ts';

const issue = {
  plant: 'Works',
  owner: '',
  project: '',
  revision: 'A',
  date: '',
  preparedBy: '',
  contentHash: 'a1b2',
};

function record(sheets: number, made: { count: number }): DocumentRecord {
  return {
    kind: 'chain-calculations',
    title: 'Chain calculations',
    orientation: 'portrait',
    issue,
    sheets: Array.from({ length: sheets }, (_, at) =>
      madeSheet(`Sheet ${at}`, [made], (each) => {
        each.count++;
        return [];
      }),
    ),
  };
}

test('law: every sheet stands in one volume, in order, and none is made to find out', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 120 }), (sheets, most) => {
      const made = { count: 0 };
      const volumes = volumesOf(record(sheets, made), most);
      expect(volumes.flatMap((each) => each.sheets.map(({ title }) => title))).toEqual(
        Array.from({ length: sheets }, (_, at) => `Sheet ${at}`),
      );
      for (const each of volumes) expect(each.sheets.length).toBeLessThanOrEqual(most);
      expect(made.count).toBe(0);
    }),
  );
});

test('a document that is short enough is left as it is; a volume says which it is', () => {
  const short = record(2, { count: 0 });
  expect(volumesOf(short, 2)).toEqual([short]);
  expect(volumesOf(record(3, { count: 0 }), 2).map((each) => each.title)).toEqual([
    'Chain calculations, volume 1 of 2',
    'Chain calculations, volume 2 of 2',
  ]);
});
