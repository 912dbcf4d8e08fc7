import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { applyEdits } from './apply-edits.ts';
import { movingEdits } from './moving-edits.ts';
import { pathsIn, plainly, text } from './written-yaml.ts';

const machine = [
  'machines:',
  '  P-1:',
  '    elements: # in order',
  '      # on the plate',
  '      motor: { kind: induction-motor, on: motor }',
  '',
  '      # counted',
  '      coupling:',
  '        kind: coupling # jaws',
  '      impeller: { kind: impeller }',
  '    shafts: [motor, "the pump"] # two',
  '',
].join('\n');
const at = ['machines', 'P-1'];

test('an entry moves with the comments above it, and each other line stays', () => {
  const moved = applyEdits(machine, movingEdits(machine, [...at, 'elements', 'motor'], 1));
  expect(moved.text.split('\n').slice(2, 10)).toEqual([
    '    elements: # in order',
    '',
    '      # counted',
    '      coupling:',
    '        kind: coupling # jaws',
    '      # on the plate',
    '      motor: { kind: induction-motor, on: motor }',
    '      impeller: { kind: impeller }',
  ]);
  expect(applyEdits(moved.text, moved.undo).text).toBe(machine);
});

test('names in one line change their places, and the comment behind them stays', () => {
  const moved = applyEdits(machine, movingEdits(machine, [...at, 'shafts', 0], 1)).text;
  expect(moved).toBe(machine.replace('[motor, "the pump"]', '["the pump", motor]'));
});

test('what has no place to go to stays', () => {
  expect(movingEdits(machine, [...at, 'elements', 'motor'], -1)).toEqual([]);
  expect(movingEdits(machine, [...at, 'elements', 'impeller'], 1)).toEqual([]);
  expect(movingEdits(machine, [...at, 'elements', 'pump'], 1)).toEqual([]);
});

test('law: a move says the same in another order, comes back with the opposite move, and is undone to the byte', () => {
  fc.assert(
    fc.property(text, fc.nat(), fc.constantFrom(-2, -1, 1, 2), (before, which, by) => {
      const paths = pathsIn(before);
      fc.pre(paths.length > 0);
      const path = paths[which % paths.length]!;
      const edits = movingEdits(before, path, by);
      const made = applyEdits(before, edits);
      const sorted = (value: unknown): string =>
        JSON.stringify(value, (_, each) =>
          Array.isArray(each)
            ? each.map((one) => sorted(one)).sort()
            : typeof each === 'object' && each !== null
              ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
              : each,
        );
      expect(sorted(plainly(made.text))).toBe(sorted(plainly(before)));
      expect(applyEdits(made.text, made.undo).text).toBe(before);
      if (edits.length > 0 && !isList(before, path)) {
        const back = applyEdits(made.text, movingEdits(made.text, path, -by)).text;
        expect(JSON.stringify(plainly(back))).toBe(JSON.stringify(plainly(before)));
      }
    }),
    { numRuns: 400 },
  );
});

function isList(text: string, path: readonly (string | number)[]): boolean {
  return typeof path.at(-1) === 'number' || parse(text) === null;
}
