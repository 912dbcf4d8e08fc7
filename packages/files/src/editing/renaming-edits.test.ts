import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyEdits } from './apply-edits.ts';
import { renamingEdits, rewordingEdits } from './renaming-edits.ts';

const text = [
  '# Pumps',
  'pumps: # both',
  "  'one': { speed: 25 Hz } # first",
  '  two:',
  '    # kept',
  '    speed: "30 Hz"',
  '  "three": 3',
  '',
].join('\n');

const renamed = (from: string, to: string, of = text) => applyEdits(of, renamingEdits(of, ['pumps', from], to)).text;

test('a key is written otherwise in the same hand, and nothing else changes', () => {
  expect(renamed('one', 'first pump')).toBe(text.replace("'one'", "'first pump'"));
  expect(renamed('two', 'second')).toBe(text.replace('two:', 'second:'));
  expect(renamed('three', 'third')).toBe(text.replace('"three"', '"third"'));
  expect(renamed('two', 'a: b')).toBe(text.replace('two:', "'a: b':"));
  expect(renamed('two', '12')).toBe(text.replace('two:', "'12':"));
  expect(renamed('two', '1H')).toBe(text.replace('two:', '1H:'));
  expect(renamingEdits(text, ['pumps', 'four'], 'five')).toEqual([]);
  expect(renamingEdits(text, ['pumps', 'two'], 'two')).toEqual([]);
});

test('a name that stands there already is refused, and so is a key that is none', () => {
  expect(() => renamed('two', 'one')).toThrow(/no other entry/);
  for (const key of ['[a, b]', 'a: 1\nb', '', '- x']) {
    expect(() => applyEdits(text, [{ path: ['pumps', 'two'], key }]), key).toThrow();
  }
  expect(() => applyEdits(text, [{ path: ['pumps', 'four'], key: 'five' }])).toThrow(/of that name/);
});

test('a text is worded otherwise in the same hand', () => {
  const reworded = (path: readonly string[], words: string) => applyEdits(text, rewordingEdits(text, path, words)).text;
  expect(reworded(['pumps', 'two', 'speed'], '31 Hz')).toBe(text.replace('"30 Hz"', '"31 Hz"'));
  expect(reworded(['pumps', 'one', 'speed'], 'a, b')).toBe(text.replace('25 Hz', '"a, b"'));
  expect(rewordingEdits(text, ['pumps', 'two'], 'x')).toEqual([]);
});

test('law: whatever a key is called, another name is found there, and undoing gives the same bytes', () => {
  const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(name, fc.constantFrom('one', 'two', 'three'), fc.boolean(), (to, from, crlf) => {
      fc.pre(!['one', 'two', 'three'].includes(to));
      const of = crlf ? text.replaceAll('\n', '\r\n') : text;
      const edits = renamingEdits(of, ['pumps', from], to);
      const made = applyEdits(of, edits);
      expect(renamingEdits(made.text, ['pumps', to], from)).toHaveLength(1);
      expect(applyEdits(made.text, made.undo).text).toBe(of);
      expect(made.undo[0]!.path.length).toBeGreaterThan(0);
    }),
  );
});
