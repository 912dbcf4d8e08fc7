import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyEdits, yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { indented } from './yaml-fragment.ts';
import { entriesOf, rootOf, yamlSource } from './yaml-source.ts';

const word = fc.constantFrom('power', 'P-301', 'drive end', 'x', 'y', 'motor', '"q u"', "'012'");
const scalar = fc.constantFrom(
  ...['160 kW', '1.50', '012', '"a, b"', "'it''s'", 'true', '~', 'on plate, left', '', '2..1000 Hz', '"a\n  b"'],
);
const remark = fc.constantFrom('', '', '', ' # note', '   # § 20 °C');

/** YAML as people write it, with every style of the plant file and with remarks in between. */
const { block } = fc.letrec<{ flow: string; block: string; value: string }>((tie) => ({
  flow: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('1', '160 kW', '"a, b"', "'x'", 'a b'),
    fc
      .uniqueArray(fc.tuple(word, tie('flow')), { maxLength: 3, selector: ([key]) => key })
      .map((all) => `{ ${all.map(([k, v]) => `${k}: ${v}`).join(', ')} }`),
    fc.array(tie('flow'), { maxLength: 3 }).map((all) => `[${all.join(', ')}]`),
  ),
  value: fc.oneof(
    { depthSize: 'small' },
    fc.tuple(scalar, remark).map(([v, r]) => ` ${v}${r}`),
    fc.tuple(tie('flow'), remark).map(([v, r]) => ` ${v}${r}`),
    fc.constantFrom(' |\n  one\n  two', ' >-\n  one\n\n  two', ' |+\n  one\n', ' |2\n    one'),
    fc.tuple(remark, tie('block'), fc.constantFrom(2, 4)).map(([r, b, n]) => `${r}\n${indented(b, n, 'every line')}`),
  ),
  block: fc.oneof(
    fc
      .uniqueArray(fc.tuple(word, tie('value'), fc.constantFrom('', '', '# about it\n', '\n')), {
        minLength: 1,
        maxLength: 4,
        selector: ([key]) => key,
      })
      .map((all) => all.map(([k, v, above]) => `${above}${k}:${v}`).join('\n')),
    fc
      .array(tie('value'), { minLength: 1, maxLength: 3 })
      .map((all) => all.map((v) => `-${v.startsWith('\n  ') ? ` ${v.slice(3)}` : v}`).join('\n')),
  ),
}));

const text = fc
  .tuple(block, fc.boolean(), fc.boolean())
  .map(([b, ended, windows]) => (ended ? `${b}\n` : b).replaceAll('\n', windows ? '\r\n' : '\n'))
  .filter(isYaml);
const fragment = fc.oneof(scalar, block, fc.constantFrom('{ a: 1 }', '|\n  one\n  two', '{}')).filter(isYaml);

function isYaml(yaml: string): boolean {
  try {
    return yamlSource(yaml) !== undefined;
  } catch {
    return false;
  }
}

function pathsIn(yaml: string): Edit['path'][] {
  const walk = (node: ReturnType<typeof rootOf>, path: Edit['path']): Edit['path'][] => [
    ...(path.length === 0 ? [] : [path]),
    ...entriesOf(node).flatMap((each) => walk(each.node, [...path, each.key])),
  ];
  return walk(rootOf(yamlSource(yaml)), []);
}

const parallel = (one: Edit['path'], other: Edit['path']): boolean =>
  one.some((key, at) => at < other.length && key !== other[at]);

const plainly = (yaml: string | undefined) => (yaml === undefined ? undefined : yamlSource(yaml).document.toJS());

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
