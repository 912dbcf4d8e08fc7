import { expect, test } from 'vitest';
import { demo } from './demo.ts';
import { prove } from './prove.ts';
import { done, fileOf, flowing, gearPlant, pump, pumpPath, text, world } from './testing/house.ts';

const turboPath = 'examples/turbo-compressor/plant.yaml';
const hydrogenPath = 'examples/hydrogen-compressor/plant.yaml';
const screenPath = 'examples/vibrating-screen/plant.yaml';
const walked = 'cable-length: { value: 85 m, status: measured, source: walked on the tray }';

test('the last line is the verdict, in one line, and says against what', async () => {
  const outcome = await done(prove, { plant: pumpPath });
  const last = text(outcome).split('\n').at(-1)!;
  expect(last).toMatch(/^\? OPEN against 6 stated targets of 2 points: /);
  expect(last.length).toBeLessThanOrEqual(80);
  expect(outcome.exit).toBe(0);
});

test('a mount that puts its resonance into the band blocks the issue: exit 1', async () => {
  const files = { 'p.yaml': pump({ 'mount: stud': 'mount: magnet-2pole' }) };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  expect(outcome.exit).toBe(1);
  expect(text(outcome).split('\n').at(-1)).toMatch(/^✗ NOT PROVEN against 6 stated targets of 2 points: /);
  expect(flowing(outcome)).toContain('✗ Blocks the issue: P-301/pump-drive-end-horizontal/bearing bursts');
});

test('what is not known is a question and no pass', async () => {
  const files = { 'p.yaml': pump({ [walked]: 'cable-length: unknown' }) };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  expect(text(outcome).split('\n').at(-1)).toMatch(/^\? OPEN against/);
  expect(flowing(outcome)).toContain('What could not be proven ? P-301/pump-drive-end-loop: loop resistance unknown');
  expect(flowing(outcome)).toContain('What to ask, the answer that would change most first');
});

test('a point without a chain is named as unproven', async () => {
  const outcome = await done(prove, { plant: 'm.yaml' }, world({ 'm.yaml': gearPlant }));
  expect(flowing(outcome)).toContain('M-1/mill-bearing: no chain is chosen');
  expect(outcome.json).toMatchObject({ verdict: 'open questions' });
});

test('hand calculation: the register tells alert and trip in unit, milliampere and counts', async () => {
  const outcome = await done(prove, { plant: pumpPath });
  const { machines } = outcome.json as {
    machines: { points: { point: string; alarms?: { register: Record<string, unknown>[] } }[] }[];
  };
  const loop = machines[0]!.points.find((each) => each.point.endsWith('loop'))!;
  const row = (name: string) => loop.alarms!.register.find((each) => each.name === name)!;
  // Alert 1.9 + 0.25 × 5.1 = 3.175 mm/s on 0..25 mm/s: 4 + 16 × 3.175/25 = 6.032 mA, 2000 counts per mA above 4.
  expect(row('alert')).toMatchObject({
    level: { value: expect.closeTo(0.003175, 9), unit: 'm/s', detector: 'rms' },
    current: { value: expect.closeTo(0.006032, 9), unit: 'A' },
    counts: 4064,
    delay: { value: 3, unit: 's' },
  });
  expect(row('trip')).toMatchObject({ current: { value: expect.closeTo(0.00944, 9) }, counts: 10_880 });
  expect(flowing(outcome)).toContain('6.032 4064 3 s');
});

test('both ways of entering the sensitivity stand beside the promise, with the seed of the trials', async () => {
  const outcome = await done(prove, { plant: pumpPath });
  expect(flowing(outcome)).toContain('with the certificate of this piece with the nominal sensitivity'.slice(0, 20));
  expect(flowing(outcome)).toMatch(/overall velocity ±10 % ±[\d.]+ % ✓ kept ±[\d.]+ % ✗ not proven/);
  expect(flowing(outcome)).toContain('(seed 1)');
});

test('each record has its settings and a reason for them', async () => {
  const shown = flowing(await done(prove, { plant: pumpPath }));
  expect(shown).toContain('velocity spectrum');
  expect(shown).toContain('F_max reaches beyond');
  expect(shown).toContain('demodulated 2000..10000 Hz');
});

test('loops of earth are shown with their way, where to open them, and the hum they can add', async () => {
  const wired = `        wiring:
          screen-earthed: both
          cabinet: VMS-01
          earth-voltage: 20 mV rms
          mains: 50 Hz
        chain:
          transducer: LPV-25`;
  const files = { 'p.yaml': pump({ '        chain:\n          transducer: LPV-25': wired }) };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  const { loops } = outcome.json as { loops: { shown: string; remedy: string[]; members: unknown[] }[] };
  expect(loops).toHaveLength(1);
  expect(loops[0]!.remedy.length).toBeGreaterThan(0);
  expect(flowing(outcome)).toContain(`Way ${loops[0]!.shown}`);
  expect(flowing(outcome)).toMatch(/Open at [A-Z]/);
  expect(flowing(await done(prove, { plant: pumpPath }))).toContain('Nothing is stated of screens and earths');
});

test('hand calculation: a voltage output is in the register, beside the logic and the time of the trip', async () => {
  const outcome = await done(prove, { plant: turboPath }, world({ [turboPath]: fileOf(turboPath) }));
  const { machines } = outcome.json as {
    machines: { points: { point: string; limits?: object; alarms?: Record<string, unknown> }[] }[];
  };
  const bearing = machines[0]!.points.find((each) => each.point === 'K-11/bearing-1')!;
  // 27 µm pp on 7.87 V/mm: 212.5 mV pp; 0.25 + 0.01 + 0.1 + 2 + 0.6 = 2.96 s.
  expect(bearing.alarms).toMatchObject({
    register: expect.arrayContaining([
      expect.objectContaining({
        name: 'baseline',
        voltage: expect.objectContaining({ value: expect.closeTo(0.2125, 4), detector: 'peak-to-peak' }),
      }),
    ]),
    logic: { whenNotOk: { shown: 'degrade' }, voting: { ask: 'the owner of the trip' } },
    responseTime: { total: { value: expect.closeTo(2.96, 9) }, allowed: { ask: 'the maker of the compressor' } },
  });
  expect(bearing.limits).toMatchObject({ clearance: { value: expect.closeTo(0.000165, 9) } });
  expect(flowing(outcome)).toContain('Voting unknown; ask the owner of the trip');
  expect(flowing(outcome)).toContain('All, with delay 2.96 s');
  // A thrust collar that only stands somewhere has no amplitude to be judged.
  expect(flowing(outcome)).not.toMatch(/ 0 µm peak|travel of 0 m/);
});

test('an area is told once: its rules apart from the chain, its caution and its sources once in a plant', async () => {
  const outcome = await done(prove, { plant: hydrogenPath }, world({ [hydrogenPath]: fileOf(hydrogenPath) }));
  const shown = flowing(outcome);
  expect(shown.split('Uo ≤ Ui 28 V')).toHaveLength(2);
  expect(shown.split('Rule area/caution')).toHaveLength(2);
  expect(shown).toContain('What are the certificate Uo, Io, Po, Co (IIC) and Lo (IIC) of supply BARRIER-ROD?');
  expect(shown).not.toMatch(/certificate (uo|co|ui|li)\b/);
  expect(JSON.stringify(outcome.json)).toContain('"declaredBy":"unsigned declaration');
});

test('a wanted motion has its window, as motion and as acceleration', async () => {
  const outcome = await done(prove, { plant: screenPath }, world({ [screenPath]: fileOf(screenPath) }));
  // 9 mm pp ± 0.5 mm.
  expect(JSON.stringify(outcome.json)).toContain('"window":{"motion":{"alertLow":{"value":0.0085');
  expect(flowing(outcome)).toContain('alert below 8500 µm pp');
});

test('the report is written where it is asked for, and is a page of its own', async () => {
  const surroundings = world();
  const outcome = await done(prove, { plant: pumpPath, out: 'out/proof.html' }, surroundings);
  const report = new TextDecoder().decode(surroundings.files.get('out/proof.html'));
  expect(report).toMatch(/^<!doctype html>/i);
  expect(report).toContain('P-301');
  expect(flowing(outcome)).toContain('Report written to out/proof.html');
});

test('law: the same plant gives the same proof, to the last digit', async () => {
  const one = await done(prove, { plant: pumpPath });
  const other = await done(prove, { plant: pumpPath });
  expect(JSON.stringify(other.json)).toBe(JSON.stringify(one.json));
});

test('the demo proves the demo plant and says where its report is', async () => {
  const surroundings = world();
  const outcome = await done(demo, {}, surroundings);
  expect(surroundings.files.has('out/raw-water-pump.html')).toBe(true);
  expect(flowing(outcome)).toContain('Report written to out/raw-water-pump.html');
  expect(text(outcome).split('\n').at(-1)).toMatch(/^\? OPEN against/);
});

test('a proof keeps to 80 columns, in either system of units', async () => {
  for (const units of ['metric', 'us'] as const) {
    const outcome = await done(prove, { plant: pumpPath }, world(), { units });
    expect(Math.max(...outcome.lines.map((line) => [...line.text].length))).toBeLessThanOrEqual(80);
  }
});
