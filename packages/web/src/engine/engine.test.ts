import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Engine } from './engine.ts';
import { exampleDisk, exampleNames } from './example-disk.ts';
import type { PlantView, TrialAsked } from './views.ts';

function opened(name: string): { engine: Engine; plant: PlantView } {
  const engine = new Engine();
  const result = engine.open(exampleDisk(name));
  if ('refused' in result) throw new Error(result.refused.message);
  while (engine.advance());
  return { engine, plant: engine.plant() };
}

const nothingHeld = (of: string): TrialAsked => ({ of, moved: {}, parts: {}, speed: undefined });

test('law: hands that hold nothing see what the table of points says', () => {
  for (const name of exampleNames) {
    const { engine, plant } = opened(name);
    for (const row of plant.points) expect(engine.trial(nothingHeld(row.of))!.outcome).toBe(row.outcome);
  }
});

test('law: what a hand holds, once kept in the file, is what the file then states', () => {
  const disk = exampleDisk('raw-water-pump');
  const of = 'P-301/pump-drive-end-horizontal';
  const { engine } = opened('raw-water-pump');
  const keys = engine
    .trial(nothingHeld(of))!
    .handles.filter((each) => each.what !== 'tolerance')
    .map((each) => each.key);
  fc.assert(
    fc.property(fc.constantFrom(...keys), fc.double({ min: -0.2, max: 0.2, noNaN: true }), (key, decades) => {
      if (Math.abs(decades) < 0.01) return;
      engine.open(disk);
      const asked: TrialAsked = { ...nothingHeld(of), moved: { [key]: decades } };
      const held = engine.trial(asked)!;
      const edits = engine.kept(asked);
      expect(edits.length, `${key} can be kept`).toBeGreaterThan(0);
      const read = engine.read(engine.edited(disk.text, edits).text);
      if ('refused' in read) throw new Error(`${key} at ${decades}: ${read.refused.message}`);
      const shown = (trial: typeof held) => trial.handles.find((each) => each.key === key)?.shown;
      expect(shown(engine.trial(nothingHeld(of))!)).toBe(shown(held));
    }),
    { numRuns: 60, seed: 7 },
  );
});

test('a swapped mount is kept as an edit of one value, and undone byte for byte', () => {
  const disk = exampleDisk('raw-water-pump');
  const { engine } = opened('raw-water-pump');
  const of = 'P-301/pump-drive-end-horizontal';
  const asked: TrialAsked = { ...nothingHeld(of), parts: { mount: 'magnet-flat' } };
  expect(engine.trial(asked)!.outcome).toBe('fails');
  const made = engine.edited(disk.text, engine.kept(asked));
  expect(made.text).toContain('mount: magnet-flat');
  expect(engine.edited(made.text, made.undo).text).toBe(disk.text);
});

test('a number kept from the hand does not go on saying that it was measured', () => {
  const disk = exampleDisk('raw-water-pump');
  const { engine } = opened('raw-water-pump');
  const of = 'P-301/pump-drive-end-loop';
  const length = engine
    .trial(nothingHeld(of))!
    .handles.find((each) => each.what === 'length' && each.path !== undefined)!;
  expect(disk.text).toContain('cable-length: { value: 85 m, status: measured, source: walked on the tray }');
  const made = engine.edited(disk.text, engine.kept({ ...nothingHeld(of), moved: { [length.key]: 0.1 } }));
  expect(made.text).toMatch(/cable-length: \{ value: 107 m, status: assumed, source: tried in the workbench \}/);
  expect(engine.edited(made.text, made.undo).text).toBe(disk.text);
});

test('a speed held by hand moves the lines of the targets, and letting go brings them back', () => {
  const { engine } = opened('raw-water-pump');
  const of = 'P-301/pump-drive-end-horizontal';
  const speed = engine.point(of)!.speed!;
  const asStated = engine.trial(nothingHeld(of))!;
  const slow = engine.trial({ ...nothingHeld(of), speed: speed.low })!;
  expect(slow.chart).not.toBe(asStated.chart);
  expect(engine.trial(nothingHeld(of))!.chart).toBe(asStated.chart);
});

test('negative: a text that cannot be read is refused in words and leaves the plant open', () => {
  const { engine, plant } = opened('raw-water-pump');
  const refused = engine.read('soundpost: plant\nversion: 1\nmachines: [');
  expect('refused' in refused && refused.refused.message).toMatch(/plant\.yaml:\d+/);
  expect(engine.plant().points.length).toBe(plant.points.length);
});

test('law: a line changed by hand, once kept, is judged by the file as it was in the hand', () => {
  const disk = exampleDisk('raw-water-pump');
  const of = 'P-301/pump-drive-end-loop';
  const { engine } = opened('raw-water-pump');
  const { inLine, lineChoices } = engine.point(of)!;
  const lines = [[], [...inLine, ...inLine], ...lineChoices.map((each) => [each.name])];
  for (const line of lines) {
    engine.open(disk);
    const asked: TrialAsked = { ...nothingHeld(of), inLine: line };
    const held = engine.trial(asked)!;
    const read = engine.read(engine.edited(disk.text, engine.kept(asked)).text);
    if ('refused' in read) throw new Error(read.refused.message);
    const told = ({ outcome, judgements }: typeof held) => ({ outcome, judgements });
    expect(told(engine.trial(nothingHeld(of))!)).toEqual(told(held));
  }
});
