import { type Design, design, terminalVoltages } from '@soundpost/core';
import { expect, test } from 'vitest';
import { examplePlant } from '../../../../../evidence/reading.ts';
import { loopedWiring, wiredPump } from '../../../../../evidence/wiring/wired-pump.ts';
import { cellText } from '../cells.ts';
import { issueFacts } from '../issue-facts.ts';
import { documentRecord } from '../issued-kind.ts';
import { tablesOf } from '../record.ts';
import { terminalPlan } from './terminal-plan.ts';

const compressor = design(examplePlant('hydrogen-compressor'), 1);
const looped = wiredPump(loopedWiring);
const bare = wiredPump();
const record = (of: Design) => documentRecord(terminalPlan, of, issueFacts(of, { contentHash: 'a1b2' }))!;
const planOf = (of: Design, name: string) => {
  const { columns, rows } = tablesOf(record(of)).find((each) => each.name === name)!;
  return rows.map((row) => Object.fromEntries(columns.map(({ head }, at) => [head, cellText(row[at]!)])));
};
const pointsOf = (of: Design) => of.machines.flatMap((machine) => machine.points);
const accelerometer = 'P-301/pump-drive-end-horizontal';

test.each([
  ['compressor', compressor],
  ['pump', looped],
])('law: every terminal a voltage is told of stands in the plan of its loop: %s', (_, of) => {
  for (const { point, appraisal } of pointsOf(of)) {
    const listed = new Set(planOf(of, `${point.of} plan`).map((row) => row.Terminal));
    for (const { terminal } of terminalVoltages(appraisal!.prediction.chain)) {
      expect(listed).toContain(terminal.replace(/, across the card$/, ''));
    }
  }
});

test('law: each terminal has every core of its loop and the screen, once', () => {
  for (const { point } of pointsOf(compressor)) {
    const rows = planOf(compressor, `${point.of} plan`);
    const seen = rows.map((row) => `${row.Terminal} ${row.Core}`);
    expect(new Set(seen).size).toBe(seen.length);
    expect(rows.filter((row) => row.Core === 'screen').length).toBe(new Set(rows.map((row) => row.Terminal)).size);
  }
});

test('law: each tag is in the sheet of its box, and channels of one box stand on one sheet', () => {
  expect(
    record(compressor)
      .sheets.map((each) => each.title)
      .slice(1),
  ).toEqual(['Box ZB-201', 'Box GI-202', 'Box ZB-203']);
  const box = planOf(looped, 'JB-301 terminals');
  expect(new Set(box.map((row) => row.Loop))).toEqual(new Set([accelerometer]));
  expect(box.map((row) => row['Comes in'])).toEqual(Array(3).fill('C1 from ACC-50M'));
  expect(box.map((row) => row['Goes on'])).toEqual(Array(3).fill('C2 to ONL-24'));
});

test('law: a screen joined to earth at both ends and at its box is so in the plan', () => {
  const screens = planOf(looped, `${accelerometer} plan`).filter((row) => row.Core === 'screen');
  expect(screens.map((row) => row.Earth)).toEqual(Array(3).fill('screen joined to earth here'));
  const cut = wiredPump({ wiring: 'screen-earthed: cabinet, screen-cut-at: junction box' });
  const earths = planOf(cut, `${accelerometer} plan`).filter((row) => row.Core === 'screen');
  expect(earths.map((row) => row.Earth)).toEqual([
    'not joined to earth',
    'not joined to earth; interrupted here',
    'screen joined to earth here',
  ]);
});

test('negative: of a screen nobody states anything of, and of one stated as unknown, the plan says unknown', () => {
  for (const of of [bare, wiredPump({ wiring: 'screen-earthed: unknown' })]) {
    const screens = planOf(of, `${accelerometer} plan`).filter((row) => row.Core === 'screen');
    for (const { Earth } of screens) expect(Earth).toMatch(/^unknown: .*where the screen is earthed/);
  }
});

test('negative: a voltage no sheet tells is unknown in the plan, not empty', () => {
  const supply = planOf(compressor, 'C-201B/rod-drop-1 plan').filter((row) => row.Core === 'supply');
  expect(supply.length).toBe(4);
  for (const row of supply) expect(row['Lowest at rest']).toMatch(/^unknown/);
});
