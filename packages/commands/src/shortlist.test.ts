import { expect, test } from 'vitest';
import { shortlist } from './shortlist.ts';
import { done, flowing, gearPlant, pumpPath, text, world } from './testing/house.ts';

const point = 'pump-drive-end-horizontal';

interface ShortlistJson {
  readonly candidates: readonly {
    readonly chain: { readonly transducer: string; readonly mount: string };
    readonly outcome: string;
    readonly leastMargin: { readonly value: number; readonly unit: string };
    readonly failures: number;
    readonly judgements: readonly { readonly outcome: string; readonly needs?: string; readonly limit: unknown }[];
  }[];
}

const outcomeOrder = ['meets', 'warns', 'cannot tell', 'fails'];

test('law: candidates stand in the order that is printed', async () => {
  const outcome = await done(shortlist, { plant: pumpPath, point });
  const { candidates } = outcome.json as ShortlistJson;
  expect(candidates.length).toBeGreaterThan(20);
  for (const [index, each] of candidates.entries()) {
    const before = candidates[index - 1];
    if (before === undefined) continue;
    const [a, b] = [outcomeOrder.indexOf(before.outcome), outcomeOrder.indexOf(each.outcome)];
    expect(a).toBeLessThanOrEqual(b);
    if (a === b) expect(before.failures).toBeLessThanOrEqual(each.failures);
    if (a === b && before.failures === each.failures) {
      expect(before.leastMargin.value).toBeGreaterThanOrEqual(each.leastMargin.value);
    }
  }
});

test('every failing candidate says for each reason what would have to change', async () => {
  const given = { plant: pumpPath, point, transducers: ['ACC-100'], mounts: ['magnet-2pole'] };
  const outcome = await done(shortlist, given);
  const [only] = (outcome.json as ShortlistJson).candidates;
  expect(only).toMatchObject({ outcome: 'fails', chain: { transducer: 'ACC-100', mount: 'magnet-2pole' } });
  const failing = only!.judgements.filter((each) => each.outcome === 'fails');
  expect(failing.length).toBe(only!.failures);
  for (const each of failing) expect(each.needs).toEqual(expect.any(String));
  expect(flowing(outcome)).toContain('What would have to change: a mounted resonance of at least');
  expect(outcome.exit).toBe(1);
});

test('a candidate that passes names the requirement that would fail first', async () => {
  const outcome = await done(shortlist, { plant: pumpPath, point, transducers: ['ACC-100'], mounts: ['stud'] });
  expect(outcome.exit).toBe(0);
  expect(flowing(outcome)).toContain('ACC-100 on stud: meets');
  expect(flowing(outcome)).toContain('Would fail first:');
});

test('the best are shown at once, the rest with --all; JSON has every one', async () => {
  const some = await done(shortlist, { plant: pumpPath, point });
  const all = await done(shortlist, { plant: pumpPath, point, all: true });
  expect(flowing(some)).toContain('--all shows them');
  expect(flowing(all)).not.toContain('--all shows them');
  expect(all.lines.length).toBeGreaterThan(some.lines.length);
  expect(JSON.stringify(all.json)).toBe(JSON.stringify(some.json));
});

test('a part that is in no catalogue is refused with the name nearest to it', async () => {
  const outcome = await done(shortlist, { plant: pumpPath, point, transducers: ['ACC-101'] });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("Did you mean 'ACC-100'?");
});

test('a point without cable and input cannot be judged, and this is said', async () => {
  const outcome = await done(shortlist, { plant: 'm.yaml', point: 'mill-bearing' }, world({ 'm.yaml': gearPlant }));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("expected a point with a 'chain'");
});

test('the matrix keeps to 80 columns and tells verdicts by sign and word', async () => {
  const outcome = await done(shortlist, { plant: pumpPath, point, all: true });
  expect(Math.max(...outcome.lines.map((line) => [...line.text].length))).toBeLessThanOrEqual(80);
  expect(text(outcome)).toContain('✓ meets, ! meets with a warning, ? cannot tell, ✗ fails');
});
