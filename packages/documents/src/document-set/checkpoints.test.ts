import { type Design, design } from '@soundpost/core';
import { expect, test } from 'vitest';
import { examplePlant } from '../../../../evidence/reading.ts';
import { cellText } from './cells.ts';
import { issueFacts } from './issue-facts.ts';
import { documentRecord } from './issued-kind.ts';
import { commissioningTests } from './kinds/commissioning-tests.ts';
import { tablesOf } from './record.ts';

function checkpointsOf(of: Design, point: string) {
  const record = documentRecord(commissioningTests, of, issueFacts(of, { contentHash: 'a1b2' }))!;
  const { columns, rows } = tablesOf(record).find((each) => each.name === `${point} checkpoints`)!;
  return rows.map((row) => Object.fromEntries(columns.map(({ head }, at) => [head, cellText(row[at]!)])));
}

test('by hand: at each checkpoint card, isolator and transmitter may be off by what their sheets state', () => {
  // Of 20 mm/s: the card 0.1 % of 16 mA, the isolator 0.1 % of the current; then 1 % of the zero and 5 % of the reading.
  const rows = checkpointsOf(design(examplePlant('solvent-recovery'), 1), 'B-410/blower-bearing-loop');
  expect(rows.map((row) => row['Within \u00b1'])).toEqual(
    ['0.025', '0.03', '0.035', '0.04', '0.045'].map((each) => `${each} mm/s rms`),
  );
  // 0.1 % of 32000 counts and 0.1 % of the current in counts, 2000 a milliampere, with half a count.
  expect(rows.map((row) => Number(row['Counts within \u00b1']))).toEqual([40.5, 48.5, 56.5, 64.5, 72.5]);
  const withTransmitter = rows.map((row) => Number.parseFloat(row['With transmitter \u00b1']!));
  for (const [at, expected] of [0.225, 0.48, 0.735, 0.99, 1.245].entries())
    expect(withTransmitter[at]).toBeCloseTo(expected, 2);
  expect(rows[0]).not.toHaveProperty('Tolerance agreed');
});

test('negative: where the sheet of the card states no accuracy there is a blank to agree it, and no figure', () => {
  const rows = checkpointsOf(design(examplePlant('raw-water-pump'), 1), 'P-301/pump-drive-end-loop');
  expect(rows).toHaveLength(5);
  for (const row of rows) {
    expect(row['Tolerance agreed']).toBe('');
    expect(Object.keys(row).filter((head) => head.includes('\u00b1'))).toEqual([]);
  }
});
