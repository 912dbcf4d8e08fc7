import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { cableRuns, type Design, design, feedCores, terminalVoltages } from '@soundpost/core';
import { expect, test } from 'vitest';
import { examplePlant, root } from '../../../../../evidence/reading.ts';
import { loopedWiring, wiredPump } from '../../../../../evidence/wiring/wired-pump.ts';
import { cellText } from '../cells.ts';
import { issueFacts } from '../issue-facts.ts';
import { documentRecord } from '../issued-kind.ts';
import { tablesOf } from '../record.ts';
import { terminalPlan } from './terminal-plan.ts';

const names = readdirSync(resolve(root, 'examples')).filter((name) =>
  existsSync(resolve(root, 'examples', name, 'plant.yaml')),
);
const designs = new Map(names.map((name) => [name, design(examplePlant(name), 1)]));
const compressor = designs.get('hydrogen-compressor')!;
const solvent = designs.get('solvent-recovery')!;
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
    const ofCables = rows.filter((row) => !row.Core!.startsWith('supply '));
    expect(rows.filter((row) => row.Core === 'screen').length).toBe(new Set(ofCables.map((row) => row.Terminal)).size);
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
  expect(supply.map((row) => row.Terminal)).toEqual([
    'oscillator-demodulator',
    'ZB-203/1, field side',
    'ZB-203/1, card side',
    'RACK-DC',
  ]);
  for (const row of supply.slice(0, 2)) expect(row['Lowest at rest']).toMatch(/^unknown: .*supply resistance/);
  expect(supply.at(-1)!['Lowest at rest']).toBe('\u221225.2');
});

const signed = (text: string | undefined) => Number(text?.replace('\u2212', '-'));

test('by hand: a supply core falls along its cable, from the input to the driver', () => {
  // 24 V ± 5 % at the rack; 12 mA through 60 m of 37 ohm/km there and back: 4.44 ohm, 0.053 V.
  const rows = planOf(solvent, 'K-412/bearing-1 plan').filter((row) => row.Core === 'supply');
  expect(rows.map((row) => [row.Terminal, row.Polarity])).toEqual([
    ['oscillator-demodulator', '\u2212'],
    ['RACK-DC', '\u2212'],
  ]);
  expect(signed(rows[0]!['Lowest at rest'])).toBeCloseTo(-25.2 + 0.05328, 1);
  expect(signed(rows[0]!['Highest at rest'])).toBeCloseTo(-22.8 + 0.05328, 1);
  expect([rows[1]!['Lowest at rest'], rows[1]!['Highest at rest']]).toEqual(['\u221225.2', '\u221222.8']);
});

test('by hand: a loop supply and an isolator have both of their pairs, and the supply itself', () => {
  // 24 V ± 10 % and a card of 250 ohm: 1 V over it at 4 mA, 5 V at 20 mA, and what is left goes to the field.
  const byTerminal = (of: Design, point: string) =>
    planOf(of, `${point} plan`)
      .filter((row) => /\+$/.test(row.Core!))
      .map((row) => [row.Terminal, signed(row['Lowest at 20 mA']), signed(row['Highest at 20 mA'])] as const);
  const pump = byTerminal(bare, 'P-301/pump-drive-end-loop');
  expect(pump).toContainEqual(['LOOP-24, field side', 16.6, 21.4]);
  expect(pump).toContainEqual(['LOOP-24, card side', 5, 5]);
  expect(pump).toContainEqual(['LOOP-24, supply', 21.6, 26.4]);
  // Behind the isolator 250 ohm and 4 m of 74 ohm/km there and back: 250.3 ohm, 5.006 V.
  const blower = byTerminal(solvent, 'B-410/blower-bearing-loop');
  expect(blower).toContainEqual(['GI-410/2, own supply', 20, 30]);
  expect(blower.find(([terminal]) => terminal === 'GI-410/2, card side')![1]).toBeCloseTo(5.006, 1);
});

test.each(names)('law: every core of every stated cable of %s is on the plan once at each of its ends', (name) => {
  const of = designs.get(name)!;
  for (const { point, appraisal } of pointsOf(of)) {
    if (appraisal === undefined) continue;
    const { chain } = appraisal.prediction;
    const rows = planOf(of, `${point.of} plan`);
    const cores = [...feedCores[chain.transducer.feed], 'screen'].toSorted();
    for (const { number } of cableRuns(chain)) {
      for (const end of [
        ['Goes on', 'to'],
        ['Comes in', 'from'],
      ] as const) {
        const found = rows.filter((row) => row[end[0]]!.startsWith(`C${number} ${end[1]} `));
        expect(found.map((row) => row.Core).toSorted()).toEqual(cores);
      }
    }
  }
});

test.each(names)(
  'law: at every terminal of %s the return is against signal and supply, and voltages have the sign told',
  (name) => {
    const of = designs.get(name)!;
    for (const { point, appraisal } of pointsOf(of)) {
      if (appraisal === undefined) continue;
      const rows = planOf(of, `${point.of} plan`);
      for (const terminal of new Set(rows.map((row) => row.Terminal))) {
        const here = rows.filter((row) => row.Terminal === terminal && row.Core !== 'screen');
        const last = here.at(-1)!;
        expect(here.length).toBeGreaterThan(1);
        for (const { Polarity, ...row } of here.slice(0, -1)) {
          expect([Polarity, last.Polarity].toSorted()).toEqual(['+', '\u2212']);
          for (const [head, text] of Object.entries(row)) {
            if (/^(Lowest|Highest)/.test(head) && /^[\u2212\d.]+$/.test(text) && signed(text) !== 0)
              expect(Math.sign(signed(text))).toBe(Polarity === '+' ? 1 : -1);
          }
        }
      }
      const screens = rows.filter((row) => row.Core === 'screen');
      expect(screens.every((row) => row.Polarity === 'screen')).toBe(true);
    }
  },
);
