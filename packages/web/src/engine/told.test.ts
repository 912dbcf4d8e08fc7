import { workings } from '@soundpost/core';
import { expect, test } from 'vitest';
import { Engine } from './engine.ts';
import { exampleDisk, exampleNames } from './example-disk.ts';
import { overlap, substitutedValue } from './testing/substituted-value.ts';
import type { TrialAsked } from './views.ts';
import type { NumberAsked, WhyView } from './why-views.ts';

function opened(name: string): Engine {
  const engine = new Engine();
  engine.open(exampleDisk(name));
  while (engine.advance());
  return engine;
}

const nothingHeld = (of: string): TrialAsked => ({ of, moved: {}, parts: {}, speed: undefined });

/** Every number the page itself sets about a plant, beside those on its sheets. */
function asked(engine: Engine): readonly { readonly number: NumberAsked; readonly shown: string }[] {
  const { points, findings, machines } = engine.plant();
  return [
    ...points.flatMap((row) => {
      const trial = engine.trial(nothingHeld(row.of))!;
      return [
        { number: { is: 'covered', points: [row.of] }, shown: String(row.covered) } as const,
        ...(row.margin === undefined ? [] : [{ number: { is: 'nearest', of: row.of }, shown: row.margin } as const]),
        ...(row.findings
          ? [{ number: { is: 'count of findings', of: row.of }, shown: `= ${row.findings}` } as const]
          : []),
        ...(/\d/.test(row.cableLength)
          ? [{ number: { is: 'cable length', of: row.of }, shown: row.cableLength } as const]
          : []),
        ...trial.handles.map(({ key, shown }) => ({
          number: { is: 'handle', key, trial: nothingHeld(row.of) } as const,
          shown,
        })),
        ...trial.judgements.flatMap(({ rule, target, what, found, limit }) =>
          [found, limit].map((shown) => ({
            number: { is: 'judgement', of: row.of, rule, target, what } as const,
            shown,
          })),
        ),
      ];
    }),
    ...findings.map(({ rule, at, key, found }) => ({
      number: { is: 'finding', rule, at, key } as const,
      shown: found,
    })),
    ...machines.flatMap(({ name }) => {
      const speed = engine.machineBench(name)?.speed;
      return speed === undefined
        ? []
        : [{ number: { is: 'speed range', machine: name } as const, shown: speed.shownHigh }];
    }),
  ];
}

function holds(shown: string, told: readonly WhyView[]): void {
  expect(told.length, shown).toBeGreaterThan(0);
  const text = JSON.stringify(told);
  expect(text, shown).not.toMatch(/NaN|Infinity|\[object/);
  for (const each of told) {
    expect(each.sentence, shown).toMatch(/^.{12,}/s);
    const open = each.numbers.some(({ name }) => name === 'unknown');
    expect(open || each.typed !== undefined || each.steps.length > 0, `${shown}: ${each.title}`).toBe(true);
    for (const { substituted } of each.steps) {
      const found = substituted === undefined ? undefined : substitutedValue(substituted);
      if (found !== undefined) expect(overlap(found.worked, found.said), `${shown}: ${substituted}`).toBe(true);
    }
  }
  expect(text.includes(JSON.stringify(shown).slice(1, -1)), `${shown} in ${text}`).toBe(true);
}

test.each(exampleNames)('law: every number the page sets of %s opens in three depths and says itself again', (name) => {
  const engine = opened(name);
  const all = asked(engine);
  expect(all.length).toBeGreaterThan(20);
  for (const { number, shown } of all) holds(shown, engine.told(number));
});

test('law: every margin of the shortlist opens to the judgement that decides', () => {
  const engine = opened('raw-water-pump');
  for (const { of } of engine.plant().points.slice(0, 2)) {
    for (const { transducer, mount, margin, cells } of engine.candidates(of).slice(0, 6)) {
      const row = { is: 'candidate', of, transducer, mount } as const;
      holds(margin.replace(/^60\.0 dB$/, '60'), engine.told({ ...row, target: undefined }));
      for (const cell of cells) {
        if (cell.margin === '') continue;
        holds(cell.margin.replace(/^60\.0 dB$/, '60'), engine.told({ ...row, target: cell.target }));
      }
    }
  }
});

test('law: a flip point opens to where it turns, and that is where the formula leads', () => {
  const engine = opened('raw-water-pump');
  const flips = engine.flips(engine.plant().points[0]!.of);
  expect(flips.length).toBeGreaterThan(2);
  for (const { flipsAt, why } of flips) holds(flipsAt, [why]);
  expect(
    flips.some(({ why }) => why.steps.some((each) => substitutedValue(each.substituted ?? '') !== undefined)),
  ).toBe(true);
});

test('law: every result of every calculator opens in three depths', () => {
  const engine = opened('raw-water-pump');
  for (const { name, example } of workings) {
    if (name === 'uncertainty-budget') continue;
    const { results } = engine.worked({ name, typed: example, files: {} });
    for (const { shown, why } of results) {
      holds(shown, [why]);
      expect(why.sources.length, name).toBeGreaterThan(0);
    }
  }
});

test('a number that is no longer there opens to nothing, and a value under the hand says what the file keeps', () => {
  const engine = opened('raw-water-pump');
  expect(engine.told({ is: 'point sheet', of: 'nowhere/at all', sheet: 'alarms', place: 0 })).toEqual([]);
  const { of } = engine.plant().points[0]!;
  const key = engine.trial(nothingHeld(of))!.handles.find((each) => each.what === 'length')!.key;
  const [told] = engine.told({ is: 'handle', key, trial: { ...nothingHeld(of), moved: { [key]: 0.3 } } });
  expect(told!.numbers.map((each) => each.name)).toEqual(['in the file', 'under the hand']);
  expect(told!.typed?.at).toContain('length');
});

test('behind a cable length stands where it was walked, as the file says it', () => {
  const told = opened('raw-water-pump').told({ is: 'cable length', of: 'P-301/pump-drive-end-loop' });
  expect(told[0]!.sentence).toContain('known by measured, walked on the tray');
  expect(told[0]!.typed).toMatchObject({ written: '85 m', status: 'measured', source: 'walked on the tray' });
});
