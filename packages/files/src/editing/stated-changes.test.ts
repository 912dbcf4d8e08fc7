import { expect, test } from 'vitest';
import { applyEdits } from './apply-edits.ts';
import { statedChanges } from './stated-changes.ts';

const before = `# a remark
plant: { name: Mill }
machines:
  M-1:
    shafts: [motor, mill]
    power: 55 kW # from the plate
    points:
      a: { alarm: 3 s }
      b: { alarm: 4 s }
`;

const single: readonly (readonly [string, string, string])[] = [
  ['power: 55 kW', 'power: 75 kW', 'machines/M-1/power'],
  ['{ alarm: 4 s }', '{ alarm: 5 s }', 'machines/M-1/points/b/alarm'],
  ['[motor, mill]', '[motor, fan]', 'machines/M-1/shafts/1'],
  ['[motor, mill]', '[motor]', 'machines/M-1/shafts'],
  ['      b: { alarm: 4 s }\n', '', 'machines/M-1/points/b'],
  ['name: Mill', 'name: Mill, owner: Somebody', 'plant/owner'],
];

test.each(single)('law: one edit of %s to %s is named at its place and nowhere else', (from, to, place) => {
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  const [one, ...others] = statedChanges(before, after);
  expect(others).toEqual([]);
  expect(one!.path.join('/')).toBe(place);
  expect(statedChanges(applyEdits(before, [one!.edit]).text, after)).toEqual([]);
  expect(statedChanges(applyEdits(after, [one!.undoing]).text, before)).toEqual([]);
});

test('law: the other way round the same places change, before and after exchanged', () => {
  const after = single.slice(0, 3).reduce((text, [from, to]) => text.replace(from, to), before);
  const there = statedChanges(before, after).map(({ path, before: was, after: is }) => ({ path, was, is }));
  const back = statedChanges(after, before).map(({ path, before: was, after: is }) => ({ path, was: is, is: was }));
  expect(there).toHaveLength(3);
  expect(back).toEqual(there);
});

test('law: remarks, blank lines and line ends state nothing', () => {
  const after = before.replace('# a remark\n', '\n').replace(' # from the plate', '').replaceAll('\n', '\r\n');
  expect(statedChanges(before, after)).toEqual([]);
});
