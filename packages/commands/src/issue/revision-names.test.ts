import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nextRevision, revisionFolder } from './revision-names.ts';

test.each([
  ['A', 'B'],
  ['Z', 'AA'],
  ['z', 'aa'],
  ['AZ', 'BA'],
  ['ZZ', 'AAA'],
  ['Az', 'Ba'],
  ['3', '4'],
  ['9', '10'],
  ['P2', 'P3'],
  ['B.09', 'B.10'],
  ['B.99', 'B.100'],
  ['Rev. A', 'Rev. B'],
  ['A-', 'A-2'],
  ['', '2'],
  ['9007199254740992', '9007199254740993'],
  ['9'.repeat(30), `1${'0'.repeat(30)}`],
])('after revision %j comes %j', (revision, next) => {
  expect(nextRevision(revision)).toBe(next);
});

test('law: the next revision is another one, and a row of them never comes back to one it had', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (revision) => {
      const row = [revision];
      for (let at = 0; at < 60; at++) row.push(nextRevision(row.at(-1)!));
      expect(new Set(row).size).toBe(row.length);
    }),
  );
});

test('law: the folder of a revision is one plain name, whatever the revision is called', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (revision) => {
      expect(revisionFolder(revision)).toMatch(/^revision-[A-Za-z0-9_-]{1,40}$/);
    }),
  );
  expect(revisionFolder('../../etc')).toBe('revision--etc');
});
