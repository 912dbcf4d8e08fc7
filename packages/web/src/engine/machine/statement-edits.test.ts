import { applyEdits } from '@soundpost/files';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { statementEdits, yamlScalar } from './statement-edits.ts';
import type { StatementForm } from './views.ts';

const path = ['motor', 'poles'];
const stated = (value: string, status = '', source = ''): StatementForm => ({ value, status, source });

function made(text: string, before: StatementForm, after: StatementForm, mayBeLeftOut = false) {
  return applyEdits(text, statementEdits({ path, statement: before, mayBeLeftOut }, after)).text;
}

test('a plain value changes in its place, and its comment stays', () => {
  expect(made('motor:\n  poles: 4 # plate\n', stated('4'), stated('6'))).toBe('motor:\n  poles: 6 # plate\n');
});

test('of a value with its origin only the part that changed is written', () => {
  const text = 'motor:\n  poles: { value: 4, status: nameplate, source: motor plate }\n';
  const before = stated('4', 'nameplate', 'motor plate');
  expect(made(text, before, stated('6', 'nameplate', 'motor plate'))).toBe(text.replace('4', '6'));
  expect(statementEdits({ path, statement: before, mayBeLeftOut: false }, { ...before, status: 'assumed' })).toEqual([
    { path: ['motor', 'poles', 'status'], yaml: 'assumed' },
  ]);
});

test('an origin comes to a plain value and goes again', () => {
  const plain = 'motor:\n  poles: 4\n';
  const known = stated('4', 'measured', 'counted: twice');
  const withOrigin = made(plain, stated('4'), known);
  expect(parse(withOrigin)).toEqual({ motor: { poles: { value: 4, status: 'measured', source: 'counted: twice' } } });
  expect(made(withOrigin, known, stated('4'))).toBe(plain);
});

test('a value taken away is unknown, or left out where it may be; nothing changed is no edit', () => {
  const text = 'motor:\n  poles: 4\n  bars: 40\n';
  expect(made(text, stated('4'), stated(''))).toBe('motor:\n  poles: unknown\n  bars: 40\n');
  expect(made(text, stated('4'), stated(' '), true)).toBe('motor:\n  bars: 40\n');
  expect(statementEdits({ path, statement: stated('4'), mayBeLeftOut: false }, stated(' 4 '))).toEqual([]);
  expect(statementEdits({ path, statement: stated(''), mayBeLeftOut: true }, stated('', 'measured'))).toEqual([]);
});

test('of what is not known can be said who could answer and between which bounds, and taken back again', () => {
  const bare = 'motor:\n  poles: unknown # ask\n';
  const asked = { ...stated(''), ask: 'the maker: sales', low: '2', high: '6' };
  const said = made(bare, stated(''), asked);
  expect(parse(said)).toEqual({ motor: { poles: { unknown: true, ask: 'the maker: sales', between: [2, 6] } } });
  expect(said).toContain('# ask');
  const wider = made(said, asked, { ...asked, high: '8' });
  expect(wider).toBe(said.replace('[2, 6]', '[2, 8]'));
  expect(made(said, asked, stated(''))).toBe(bare);
  expect(made(said, asked, stated('4'))).toBe(bare.replace('unknown', '4'));
  expect(statementEdits({ path, statement: stated(''), mayBeLeftOut: false }, { ...stated(''), low: '2' })).toEqual([]);
});

test('law: whatever is typed is read back as it was typed, alone and inside braces', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' })), (text) => {
      expect(String(parse(yamlScalar(text), { schema: 'failsafe' }))).toBe(text);
      expect(parse(`{ value: ${yamlScalar(text)}, status: assumed }`, { schema: 'failsafe' }).value).toBe(text);
    }),
  );
});
