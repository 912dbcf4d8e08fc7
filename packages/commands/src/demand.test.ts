import { expect, test } from 'vitest';
import { demand } from './demand.ts';
import { done, flowing, gearPlant, pump, pumpPath, text, world } from './testing/house.ts';

interface DemandJson {
  readonly machines: readonly {
    readonly frequencies: {
      readonly shafts: readonly { readonly shaft: string; readonly ratio: unknown }[];
      readonly lines: readonly {
        readonly line: string;
        readonly exactRatio?: { readonly of: string; readonly ratio: string };
        readonly states: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
      }[];
    };
    readonly coincidences: readonly { readonly separable: string }[];
    readonly unknown: readonly unknown[];
    readonly points: readonly {
      readonly point: string;
      readonly unknown: readonly { readonly of: string; readonly what: string; readonly ask?: string }[];
      readonly targets: readonly Readonly<Record<string, unknown>>[];
      readonly proposals: readonly unknown[];
    }[];
  }[];
}

const json = async (files: Readonly<Record<string, string>>, given: object) =>
  (await done(demand, given as never, world(files))).json as DemandJson;

test('hand calculation: speeds and lines of the pump at the ends of its range, with detector and source', async () => {
  const [machine] = (await json({}, { plant: pumpPath })).machines;
  const line = (name: string) => machine!.frequencies.lines.find((each) => each.line === name)!;
  // 50 Hz on 4 poles less 14 r/min: 1486 r/min; six vanes.
  expect(line('pump/1x').states.highest).toMatchObject({ value: 1486 / 60, unit: 'Hz' });
  expect(line('impeller/vane-pass').states.highest!.value).toBeCloseTo((6 * 1486) / 60, 9);
  const [overall] = machine!.points[0]!.targets;
  expect(overall).toMatchObject({
    smallest: { value: 0.0005, unit: 'm/s', detector: 'rms', shown: '0.5 mm/s rms' },
    tolerance: { low: -0.1, high: 0.1 },
    origin: { by: 'stated' },
  });
});

test('ratios of tooth counts stay exact fractions', async () => {
  const [machine] = (await json({ 'mill.yaml': gearPlant }, { plant: 'mill.yaml' })).machines;
  const mill = machine!.frequencies.shafts.find((each) => each.shaft === 'mill');
  expect(mill!.ratio).toBe('-15/1456');
  const mesh = machine!.frequencies.lines.find((each) => each.line === 'gears/mesh');
  expect(mesh!.exactRatio).toMatchObject({ ratio: '15' });
  expect(mesh!.states.duty!.value).toBeCloseTo((15 * 1486) / 60, 9);
});

test('what nobody has stated is listed with who could answer, and never filled', async () => {
  const files = { 'mill.yaml': gearPlant };
  const [machine] = (await json(files, { plant: 'mill.yaml' })).machines;
  expect(machine!.points[0]!.unknown).toContainEqual({
    of: 'M-1/mill-bearing',
    what: 'surface temperature',
    ask: 'the operator',
  });
  expect(machine!.points[0]!.targets[0]!.smallest).toMatchObject({ unknown: [{ what: 'smallest level' }] });
  const shown = flowing(await done(demand, { plant: 'mill.yaml' }, world(files)));
  expect(shown).toContain('surface temperature of M-1/mill-bearing; ask the operator');
});

test('lines that come close are shown with the spacing and record that tell them apart', async () => {
  const outcome = await done(demand, { plant: pumpPath });
  // Four orders of the shaft against twice line frequency lie a pole pass apart, 4 × 7 r/min at the lowest speed.
  const poles = ((4 * 7) / 60 / 2).toPrecision(3);
  expect(flowing(outcome)).toContain(poles);
  expect(flowing(outcome)).toContain('4 × motor/1x and motor/twice-line always lie motor/pole-pass apart');
  expect(outcome.exit).toBe(0);
});

test('more operating states than stand abreast go into further tables, each within 80 columns', async () => {
  const outcome = await done(demand, { plant: 'mill.yaml' }, world({ 'mill.yaml': gearPlant }));
  const shown = text(outcome);
  for (const state of ['lowest', 'highest', 'duty', 'night']) expect(shown).toContain(`${state}, Hz`);
  expect(Math.max(...outcome.lines.map((line) => [...line.text].length))).toBeLessThanOrEqual(80);
});

test('one point only, by its name or with its machine; a name close to one is suggested', async () => {
  const alone = await done(demand, { plant: pumpPath, point: 'pump-drive-end-loop' });
  expect(text(alone)).not.toContain('pump-drive-end-horizontal');
  const whole = await done(demand, { plant: pumpPath, point: 'P-301/pump-drive-end-loop' });
  expect(text(whole)).toBe(text(alone));
  const wrong = await done(demand, { plant: pumpPath, point: 'pump-drive-end-lop' });
  expect(wrong.exit).toBe(2);
  expect(flowing(wrong)).toMatch(/Did you mean '(P-301\/)?pump-drive-end-loop'\?/);
});

test('a contradiction of the machine is a question with its place, not an exit of its own', async () => {
  const files = { 'p.yaml': pump({ 'rated-slip: { value: 14 r/min': 'rated-slip: { value: 210 r/min' }) };
  const outcome = await done(demand, { plant: 'p.yaml' }, world(files));
  expect(flowing(outcome)).toContain('? Question: P-301/motor');
  expect(flowing(outcome)).toContain('machine/poles-against-speed');
});

test('what to ask stands in the order in which the answers would change the design', async () => {
  const outcome = await done(demand, { plant: pumpPath });
  expect(flowing(outcome)).toContain(
    'What to ask, the answer that would change most first ? temperature coefficient of transducer LPV-25',
  );
  const { questions } = outcome.json as { questions: { what: string; points: string[] }[] };
  expect(questions.map((each) => each.what)).toContain('transverse sensitivity');
  const other = await done(demand, { plant: pumpPath, point: 'pump-drive-end-horizontal' });
  expect(other.json).toMatchObject({ questions: [] });
});

test('units and decimal sign are of the output alone', async () => {
  const us = await done(demand, { plant: pumpPath }, world(), { units: 'us' });
  expect(flowing(us)).toContain('in/s rms');
  const comma = await done(demand, { plant: pumpPath }, world(), { decimal: 'comma' });
  expect(flowing(comma)).toContain('24,77');
});
