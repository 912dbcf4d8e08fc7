import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyEdits, yamlAt } from './apply-edits.ts';
import { mergedPlants } from './merged-plants.ts';
import { fragment, parallel, pathsIn, plainly, text } from './written-yaml.ts';

const base = '# plant\nmachines:\n  P-1:\n    power: 160 kW\n    points: [a, b]\n  P-2:\n    power: 10 kW\npolicy: x\n';
const changed = (from: string, to: string, of = base): string => {
  expect(of).toContain(from);
  return of.replace(from, to);
};

test('changes in two places are both taken, the text is theirs', () => {
  const mine = changed('160 kW', '200 kW');
  const theirs = changed('policy: x', 'policy: y # why', changed('# plant', '# the plant'));
  expect(mergedPlants(base, mine, theirs)).toEqual({ text: changed('160 kW', '200 kW', theirs), conflicts: [] });
});

test('what both changed differently stays as theirs and is listed with all three', () => {
  const merged = mergedPlants(base, changed('160 kW', '200 kW'), changed('160 kW', '250 kW'));
  const path = ['machines', 'P-1', 'power'];
  expect(merged.conflicts).toEqual([{ path, base: '160 kW', mine: '200 kW', theirs: '250 kW' }]);
  expect(merged.text).toBe(changed('160 kW', '250 kW'));
});

test('what both changed alike is no conflict; a number typed otherwise is a change', () => {
  const mine = changed('160 kW', '200 kW', changed('policy: x', 'policy: 0.10'));
  const theirs = changed('160 kW', '200 kW', changed('policy: x', 'policy: 0.1'));
  expect(mergedPlants(base, mine, theirs).conflicts).toEqual([
    { path: ['policy'], base: 'x', mine: '0.10', theirs: '0.1' },
  ]);
});

test('a machine taken away on one side and changed on the other is a conflict, both ways', () => {
  const gone = changed('  P-2:\n    power: 10 kW\n', '');
  const more = changed('10 kW', '12 kW');
  expect(mergedPlants(base, gone, more)).toEqual({
    text: more,
    conflicts: [{ path: ['machines', 'P-2'], base: 'power: 10 kW', theirs: 'power: 12 kW' }],
  });
  expect(mergedPlants(base, more, gone)).toEqual({
    text: gone,
    conflicts: [{ path: ['machines', 'P-2'], base: 'power: 10 kW', mine: 'power: 12 kW' }],
  });
});

test('new machines of both sides stand there, mine in the order I gave them', () => {
  const mine = changed('  P-2:', '  P-11: {}\n  P-12: {}\n  P-2:');
  const theirs = changed('policy: x', '  P-3: {}\npolicy: x');
  expect(mergedPlants(base, mine, theirs).text).toBe(changed('  P-2:', '  P-11: {}\n  P-12: {}\n  P-2:', theirs));
});

test('elements of a list of one length are merged one by one, lists of other lengths as a whole', () => {
  const theirs = changed('[a, b]', '[a, d]');
  expect(mergedPlants(base, changed('[a, b]', '[c, b]'), theirs)).toEqual({
    text: changed('[a, b]', '[c, d]'),
    conflicts: [],
  });
  expect(mergedPlants(base, changed('[a, b]', '[a, b, c]'), theirs).conflicts).toEqual([
    { path: ['machines', 'P-1', 'points'], base: '[a, b]', mine: '[a, b, c]', theirs: '[a, d]' },
  ]);
});

test('a comment of mine that does not come along is listed, not lost', () => {
  const mine = changed('# plant', '# plant, as built');
  expect(mergedPlants(base, mine, changed('policy: x', 'policy: y')).conflicts).toEqual([
    { path: [], mine: '# plant, as built' },
  ]);
});

test('a side that cannot be read stays as it is, and mine is listed whole', () => {
  const mine = changed('policy: x', 'policy: y');
  const theirs = changed('policy: x', 'policy: [');
  expect(mergedPlants(base, mine, theirs)).toEqual({ text: theirs, conflicts: [{ path: [], base, mine, theirs }] });
});

test('law: with an unchanged side the other comes out, byte for byte', () => {
  fc.assert(
    fc.property(text, text, (from, to) => {
      expect(mergedPlants(from, to, from)).toEqual({ text: to, conflicts: [] });
      expect(mergedPlants(from, from, to)).toEqual({ text: to, conflicts: [] });
      expect(mergedPlants(from, to, to)).toEqual({ text: to, conflicts: [] });
    }),
    { numRuns: 200 },
  );
});

test('law: edits of separate places merge without conflict, and both are there', () => {
  fc.assert(
    fc.property(text, fragment, fragment, fc.nat(), fc.nat(), (from, one, two, at, other) => {
      const paths = pathsIn(from);
      const path = paths[at % paths.length]!;
      const apart = paths.filter((each) => parallel(each, path));
      fc.pre(apart.length > 0);
      const away = apart[other % apart.length]!;
      const mine = applyEdits(from, [{ path, yaml: one }]).text;
      const theirs = applyEdits(from, [{ path: away, yaml: two }]).text;
      const merged = mergedPlants(from, mine, theirs);
      expect(merged.conflicts.filter((each) => each.path.length > 0)).toEqual([]);
      expect(plainly(yamlAt(merged.text, path))).toEqual(plainly(yamlAt(mine, path)));
      expect(plainly(yamlAt(merged.text, away))).toEqual(plainly(yamlAt(theirs, away)));
    }),
    { numRuns: 400 },
  );
});

test('law: whatever the three are, what is not as mine in the result is as theirs, and then it is listed', () => {
  fc.assert(
    fc.property(text, text, text, (from, mine, theirs) => {
      const { text: merged, conflicts } = mergedPlants(from, mine, theirs);
      for (const { path } of conflicts.filter((each) => each.path.length > 0)) {
        expect(plainly(yamlAt(merged, path))).toEqual(plainly(yamlAt(theirs, path)));
      }
      const under = (path: readonly (string | number)[], top: readonly (string | number)[]) =>
        top.every((key, index) => path[index] === key);
      for (const path of pathsIn(mine)) {
        const own = plainly(yamlAt(mine, path));
        const kept = JSON.stringify(plainly(yamlAt(merged, path))) === JSON.stringify(own);
        // A mapping of mine with nothing in it loses nothing where theirs has put entries in.
        const filled = JSON.stringify(own) === '{}' && typeof plainly(yamlAt(merged, path)) === 'object';
        const old = JSON.stringify(plainly(yamlAt(from, path))) === JSON.stringify(own);
        const listed = conflicts.some((each) => under(path, each.path) || under(each.path, path));
        const deeper = pathsIn(mine).some((each) => each.length > path.length && under(each, path));
        if (!deeper) expect(kept || filled || old || listed, `${path} of ${mine}`).toBe(true);
      }
    }),
    { numRuns: 400 },
  );
});
