import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sources, workings } from '@soundpost/core';
import { ruleTextOf } from '@soundpost/documents';
import { expect, test } from 'vitest';
import { explain } from './explain.ts';
import { checkout, done, flowing, gearPlant, pump, pumpPath, text, world } from './testing/house.ts';
import { topics, topicsCalled } from './topics/topics.ts';

const point = 'pump-drive-end-horizontal';

function rulesSpoken(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.test.ts'))
    .flatMap((entry) => {
      const source = readFileSync(join(entry.parentPath, entry.name), 'utf8');
      return [...source.matchAll(/\b(?:rule|id): '([a-z]+\/[a-z-]+)'/g)].map((match) => match[1]!);
    });
}

const walked = 'cable-length: { value: 85 m, status: measured, source: walked on the tray }';

test('completeness: every rule that any room of the core speaks with can be explained', () => {
  const spoken = new Set(rulesSpoken(join(checkout, 'packages/core/src')));
  expect(spoken.size).toBeGreaterThan(50);
  const explained = new Set(topics.filter((each) => each.is === 'rule').map((each) => each.name));
  const missing = [...spoken].filter((each) => !explained.has(each));
  expect(missing, 'each needs a rule in a list the core exports, or a line in topics/finding-rules.ts').toEqual([]);
});

test('completeness: every working and every source can be explained, and every topic keeps to 80 columns', async () => {
  for (const name of [...workings.map((each) => each.name), ...sources.map((each) => each.id)]) {
    expect(topicsCalled(name).length, name).toBeGreaterThan(0);
  }
  for (const topic of topics) {
    const outcome = await done(explain, { words: [topic.name] });
    expect(outcome.exit, topic.name).toBe(0);
    expect(Math.max(...outcome.lines.map((line) => [...line.text].length)), topic.name).toBeLessThanOrEqual(80);
  }
});

test('a rule is found by its whole name and by what stands after its room', async () => {
  const whole = await done(explain, { words: ['chain/overload'] });
  const short = await done(explain, { words: ['overload'] });
  expect(text(short)).toBe(text(whole));
  expect(flowing(whole)).toContain('worst peak');
});

test('without a name the topics are listed; a wrong one is refused with the nearest', async () => {
  expect(flowing(await done(explain, { words: [] }))).toContain('chain/overload');
  const wrong = await done(explain, { words: ['overlod'] });
  expect(wrong.exit).toBe(2);
  expect(flowing(wrong)).toContain("Did you mean 'overload'?");
});

test('every verdict of a point is told in a sentence, in numbers, and by its formula', async () => {
  const outcome = await done(explain, { words: [pumpPath, point] });
  const { judgements } = outcome.json as { judgements: { rule: string; derivations: unknown[] }[] };
  expect(judgements.length).toBeGreaterThan(20);
  for (const each of judgements) {
    expect(ruleTextOf(each.rule), each.rule).toBeDefined();
    expect(each.derivations.length, each.rule).toBeGreaterThan(0);
  }
  const shown = text(outcome);
  const count = (word: string) => shown.split('\n').filter((line) => line.startsWith(`  ${word}`)).length;
  expect(count('Sentence')).toBe(judgements.length);
  expect(count('Numbers')).toBe(judgements.length);
  expect(count('Formula')).toBe(judgements.length);
});

test('hand calculation: the formula of the cable drive holds its own numbers', async () => {
  const outcome = await done(explain, { words: [pumpPath, point, 'bearing bursts'] });
  // 3 mA left of 4 mA; 2 m of 100 pF/m; 5 g at 100 mV/g: 3e-3/(2π · 200e-12 · 0.5) = 4.775 MHz.
  expect(flowing(outcome)).toMatch(/f = 3 mA \/ \(2π · 200 pF · 500 mV\) = 4\.775 MHz/);
});

test('hand calculation: worst peak over the range gives the margin that is printed', async () => {
  const outcome = await done(explain, { words: [pumpPath, point] });
  const found = /margin = 20 · lg\(80 g \/ ([\d.]+) g\) = ([\d.]+) dB/.exec(flowing(outcome))!;
  expect(Number(found[2])).toBeCloseTo(20 * Math.log10(80 / Number(found[1])), 1);
});

test('the loop is explained with its own formulas', async () => {
  const shown = flowing(await done(explain, { words: [pumpPath, 'pump-drive-end-loop'] }));
  // Hand calculation: 24 V less 10 %, less 12 V, at 21.5 mA.
  expect(shown).toContain('R_max = (21.6 V − 12 V) / 21.5 mA = 446.5 Ω');
  expect(shown).toContain('limit = 25 mm/s rms · 16.5 / 16 = 25.78 mm/s rms');
});

test('what cannot be told says what is missing instead of a formula', async () => {
  const files = { 'p.yaml': pump({ [walked]: 'cable-length: unknown' }) };
  const outcome = await done(explain, { words: ['p.yaml', 'pump-drive-end-loop'] }, world(files));
  expect(flowing(outcome)).toMatch(/unknown: the cable length of [^.]*/);
});

test('where the verdict would turn is shown on wish, nearest first', async () => {
  const outcome = await done(explain, { words: [pumpPath, 'pump-drive-end-loop'], flips: true });
  const { flipPoints } = outcome.json as { flipPoints: { decades: number; from: string; to: string }[] };
  const distances = flipPoints.map((each) => Math.abs(each.decades));
  expect(distances.length).toBeGreaterThan(3);
  expect([...distances].sort((a, b) => a - b)).toEqual(distances);
  for (const each of flipPoints) expect(each.to).not.toBe(each.from);
  expect(flipPoints[0]).toMatchObject({ of: 'transducer LPV-25', what: 'range', stated: '25 mm/s rms' });
});

test('a plant file alone, a point without a chain, a wrong target: each is refused with what is there', async () => {
  const alone = await done(explain, { words: [pumpPath] });
  expect(alone.exit).toBe(2);
  expect(flowing(alone)).toContain("'P-301/pump-drive-end-loop'");
  const bare = await done(explain, { words: ['m.yaml', 'mill-bearing'] }, world({ 'm.yaml': gearPlant }));
  expect(bare.exit).toBe(2);
  const target = await done(explain, { words: [pumpPath, point, 'bearing burst'] });
  expect(flowing(target)).toContain("Did you mean 'bearing bursts'?");
  expect((await done(explain, { words: [pumpPath, point, 'bearing', 'bursts'] })).exit).toBe(2);
});

test('every number of a sheet and of a machine is told as the screen tells it: sentence, numbers, formula, source', async () => {
  const alarms = flowing(await done(explain, { words: [pumpPath, 'pump-drive-end-loop', 'alarms', 'alert'] }));
  expect(alarms).toContain('baseline (1.9 mm/s rms');
  expect(alarms).toMatch(/alert = min\(1\.9 mm\/s rms .* = 3\.175 mm\/s rms/);
  expect(alarms).toContain('ISO 20816-1');
  const frequency = await done(explain, { words: [pumpPath, 'P-301', 'pump-drive-end/outer-ring at lowest'] });
  expect(flowing(frequency)).toContain('f_o = n/2 · |f_i − f_a| · (1 − k)');
  const { numbers } = frequency.json as { numbers: { steps: { working?: string }[] }[] };
  expect(numbers[0]!.steps.some((each) => each.working === 'rolling-bearing-frequencies')).toBe(true);
  for (const sheet of ['demand', 'chain', 'noise', 'bias', 'acquisition', 'uncertainty']) {
    const outcome = await done(explain, { words: [pumpPath, point, sheet] });
    expect((outcome.json as { numbers: unknown[] }).numbers.length, sheet).toBeGreaterThan(3);
  }
});

test('a sheet the point does not have, and words no number has, are refused with those there are', async () => {
  const sheet = await done(explain, { words: [pumpPath, point, 'alarms'] });
  expect(sheet.exit).toBe(2);
  expect(flowing(sheet)).toContain('acquisition');
  const words = await done(explain, { words: [pumpPath, 'pump-drive-end-loop', 'alarms', 'no such number'] });
  expect(words.exit).toBe(2);
  expect(flowing(words)).toContain('Alert');
});
