import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyEdits, yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { fragment, parallel, pathsIn, plainly, text } from './written-yaml.ts';

const where = fc.nat();
const runs = { numRuns: 400 };

test('law: a value put in is found there, everything beside it is as it was, and undoing gives the same bytes', () => {
  fc.assert(
    fc.property(text, fragment, where, (before, yaml, at) => {
      const paths = pathsIn(before);
      const path = paths[at % paths.length]!;
      const { text: after, undo } = applyEdits(before, [{ path, yaml }]);
      expect(plainly(yamlAt(after, path))).toEqual(plainly(yaml));
      for (const each of paths) if (parallel(each, path)) expect(yamlAt(after, each)).toBe(yamlAt(before, each));
      expect(applyEdits(after, undo).text).toBe(before);
    }),
    runs,
  );
});

test('law: an entry taken away is gone, everything beside it is as it was, and undoing gives the same bytes', () => {
  fc.assert(
    fc.property(text, where, (before, at) => {
      const paths = pathsIn(before).filter((each) => typeof each.at(-1) === 'string');
      fc.pre(paths.length > 0);
      const path = paths[at % paths.length]!;
      const { text: after, undo } = applyEdits(before, [{ path, yaml: undefined }]);
      expect(yamlAt(after, path)).toBeUndefined();
      for (const each of paths) if (parallel(each, path)) expect(yamlAt(after, each)).toBe(yamlAt(before, each));
      expect(applyEdits(after, undo).text).toBe(before);
    }),
    runs,
  );
});

test('law: an element taken away or put between leaves the others, and undoing gives the same bytes', () => {
  fc.assert(
    fc.property(text, fragment, where, fc.boolean(), (before, yaml, at, away) => {
      const paths = pathsIn(before).filter((each) => typeof each.at(-1) === 'number');
      fc.pre(paths.length > 0);
      const path = paths[at % paths.length]!;
      const list = path.slice(0, -1);
      const index = path.at(-1) as number;
      const old = plainly(`${yamlAt(before, list)}`) as unknown[];
      const edit: Edit = away ? { path, yaml: undefined } : { path, yaml, before: index };
      const { text: after, undo } = applyEdits(before, [edit]);
      const expected = old.toSpliced(index, away ? 1 : 0, ...(away ? [] : [plainly(yaml)]));
      expect(plainly(yamlAt(after, list))).toEqual(expected);
      expect(applyEdits(after, undo).text).toBe(before);
    }),
    runs,
  );
});

test('law: a new entry is found, on whatever path, before whatever it was to stand, and several edits are undone together', () => {
  fc.assert(
    fc.property(text, fragment, fragment, where, fc.boolean(), (before, yaml, more, at, first) => {
      const maps = pathsIn(before).filter((each) => typeof each.at(-1) === 'string');
      fc.pre(maps.length > 0);
      const beside = maps[at % maps.length]!;
      const path = [...beside.slice(0, -1), 'new one'];
      const edits: Edit[] = [
        { path, yaml, ...(first ? { before: beside.at(-1)! } : {}) },
        { path: [...beside.slice(0, -1), 'another', 'inner'], yaml: more },
        { path: beside, yaml: undefined },
      ];
      const { text: after, undo } = applyEdits(before, edits);
      expect(plainly(yamlAt(after, path))).toEqual(plainly(yaml));
      expect(plainly(yamlAt(after, [...path.slice(0, -1), 'another', 'inner']))).toEqual(plainly(more));
      expect(applyEdits(after, undo).text).toBe(before);
    }),
    runs,
  );
});
