import { asideOf } from '@soundpost/store';
import { expect, test } from 'vitest';
import { changes } from './changes.ts';
import { issue } from './issue.ts';
import { done, flowing, pump, pumpPath, world } from './testing/house.ts';

const issued = { plant: pumpPath, out: 'out', preliminary: false, documents: ['cable-schedule'], forms: ['csv'] };

test('an issue holds what it was made from, and is compared without the plant file it came from', async () => {
  const surroundings = world();
  await done(issue, issued, surroundings);
  const frozen = surroundings.files.get('out/revision-A/stated/plant.yaml')!;
  expect(new TextDecoder().decode(frozen)).toBe(pump());
  surroundings.files.set(pumpPath, new TextEncoder().encode(pump({ 'delay: 3 s': 'delay: 5 s' })));
  const outcome = await done(changes, { old: 'out/revision-A', new: pumpPath }, surroundings);
  expect(outcome.exit).toBe(0);
  expect(flowing(outcome)).toContain('alarm/delay: 3 s → 5 s');
  expect(flowing(outcome)).toContain('By change [1]: therefore alarm.');
  expect(flowing(outcome)).toContain('P-301/pump-drive-end-loop: alarm changed');
  const same = await done(changes, { old: 'out/revision-A', new: 'out/revision-A/contents.json' }, surroundings);
  expect(flowing(same)).toContain('Both state the same');
});

test('what becomes unproven is named with point and target, and the command ends with 1', async () => {
  const surroundings = world({ 'next.yaml': pump({ 'mount: stud': 'mount: magnet-2pole' }) });
  const outcome = await done(changes, { old: pumpPath, new: 'next.yaml' }, surroundings);
  expect(outcome.exit).toBe(1);
  expect(flowing(outcome)).toContain('P-301/pump-drive-end-horizontal, bearing bursts: meets → fails');
  const json = JSON.parse(JSON.stringify(outcome.json));
  expect(json.unproven[0]).toMatchObject({ target: 'bearing bursts', before: 'meets', after: 'fails' });
  expect(json.derived.every((each: { because: { changes: number[] } }) => each.because.changes[0] === 0)).toBe(true);
});

test('negative: an issue whose plant file was touched is refused, and so is one that leads elsewhere', async () => {
  const surroundings = world();
  await done(issue, issued, surroundings);
  surroundings.files.set('out/revision-A/stated/plant.yaml', new TextEncoder().encode(pump({ '85 m': '86 m' })));
  const touched = await done(changes, { old: 'out/revision-A', new: pumpPath }, surroundings);
  expect(touched.exit).toBe(2);
  expect(flowing(touched)).toContain('not as it was issued');
  const contents = new TextDecoder().decode(surroundings.files.get('out/revision-A/contents.json'));
  const elsewhere = contents.replace('"plant": "stated/plant.yaml"', '"plant": "../../secret.yaml"');
  surroundings.files.set('out/revision-A/contents.json', new TextEncoder().encode(elsewhere));
  const led = await done(changes, { old: 'out/revision-A', new: pumpPath }, surroundings);
  expect(led.exit).toBe(2);
  expect(flowing(led)).toContain('a file in the folder of the issue');
});

test('negative: contents that are none, and a plant file that is not there, are refused in words', async () => {
  const surroundings = world({ 'odd/contents.json': '{"soundpost": "other"}' });
  const odd = await done(changes, { old: 'odd', new: pumpPath }, surroundings);
  expect(odd.exit).toBe(2);
  expect(flowing(odd)).toContain('the contents of an issue');
  expect((await done(changes, { old: 'nowhere.yaml', new: pumpPath }, surroundings)).exit).toBe(2);
});

test('where an issue was cut off between two names, the old one is read under the name it was left with, and named', async () => {
  const surroundings = world();
  await done(issue, issued, surroundings);
  const aside = asideOf('out/revision-A').replaceAll('\\', '/');
  for (const [path, bytes] of [...surroundings.files].filter(([each]) => each.startsWith('out/revision-A/'))) {
    surroundings.files.delete(path);
    surroundings.files.set(aside + path.slice('out/revision-A'.length), bytes);
  }
  const next = pump({ 'delay: 3 s': 'delay: 5 s' });
  surroundings.files.set(pumpPath, new TextEncoder().encode(next));
  for (const old of ['out/revision-A', 'out/revision-A/', 'out/revision-A/contents.json']) {
    const outcome = await done(changes, { old, new: pumpPath }, surroundings);
    expect(outcome.exit, old).toBe(0);
    expect(flowing(outcome)).toContain('alarm/delay: 3 s → 5 s');
    expect(flowing(outcome)).toContain(aside);
  }
  expect((await done(changes, { old: 'out/revision-B', new: pumpPath }, surroundings)).exit).toBe(2);
});
