import { Broken } from '@soundpost/core';
import { expect, test } from 'vitest';
import { always, command } from './command.ts';
import { commands } from './commands.ts';
import { demand } from './demand.ts';
import { prove } from './prove.ts';
import { done, flowing, pump, pumpPath, text, world } from './testing/house.ts';

test('everything wrong with a file is told at once, each with file, line, column, path and a caret', async () => {
  const files = { 'p.yaml': pump({ 'poles: { value: 4': 'poles: { value: four', 'mount: stud': 'mount: stut' }) };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  expect(outcome.exit).toBe(2);
  const { refused } = outcome.json as {
    refused: { file: string; line: number; column: number; path: string; read: string }[];
  };
  const line = (wanted: string) => files['p.yaml'].split('\n').findIndex((each) => each.includes(wanted)) + 1;
  expect(refused).toMatchObject([
    { file: 'p.yaml', line: line('value: four'), read: 'four', path: expect.stringContaining('motor') },
  ]);
  expect(text(outcome)).toMatch(/^p\.yaml:\d+:\d+: machines\/P-301/);
  expect(text(outcome)).toMatch(/\n +\d+ \| .*four.*\n +\^/);
});

test('a part that no catalogue has is refused at its name, with the nearest', async () => {
  const outcome = await done(prove, { plant: 'p.yaml' }, world({ 'p.yaml': pump({ 'mount: stud': 'mount: stut' }) }));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("Did you mean 'stud'?");
});

test('an unknown key is refused with the nearest known one', async () => {
  const outcome = await done(demand, { plant: 'p.yaml' }, world({ 'p.yaml': pump({ 'rotor-bars:': 'rotor-bar:' }) }));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("Did you mean 'rotor-bars'?");
});

test('a file that is not there, is no text, or is no plant: refused in words, never thrown', async () => {
  const files = { 'bin.yaml': new Uint8Array([1, 0, 2]), 'list.yaml': '- 1\n', 'empty.yaml': '' };
  for (const plant of ['none.yaml', ...Object.keys(files)]) {
    const outcome = await done(prove, { plant }, world(files));
    expect(outcome.exit, plant).toBe(2);
    expect(flowing(outcome), plant).toMatch(/expected/);
  }
});

test('a catalogue that is missing or broken is named', async () => {
  const named = { 'p.yaml': pump({ 'catalogues: [generic]': 'catalogues: [generic, own.yaml]' }) };
  const missing = await done(prove, { plant: 'p.yaml' }, world(named));
  expect(missing.exit).toBe(2);
  expect(flowing(missing)).toContain('own.yaml');
  const broken = await done(prove, { plant: 'p.yaml' }, world({ ...named, './own.yaml': 'soundpost: catalogue\n' }));
  expect(broken.exit).toBe(2);
  expect(text(broken)).toMatch(/^\.\/own\.yaml:1:1/);
});

test('a catalogue of the user hides a generic part of the same name', async () => {
  const own = `soundpost: catalogue
version: 1
title: Own parts
mounts:
  stud: { kind: hand-probe, stiffness: 5e6 N/m, added-mass: 80 g }
`;
  const files = { 'p.yaml': pump({ 'catalogues: [generic]': 'catalogues: [generic, own.yaml]' }), './own.yaml': own };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  expect(outcome.exit).toBe(1);
});

test('a long line of the file is cut to the page, with the caret under its place', async () => {
  const long = `${' '.repeat(0)}{ value: four, status: nameplate, source: ${'plate '.repeat(40)}}`;
  const files = { 'p.yaml': pump({ '{ value: 4, status: nameplate, source: motor plate }': long }) };
  const outcome = await done(prove, { plant: 'p.yaml' }, world(files));
  expect(outcome.exit).toBe(2);
  expect(Math.max(...outcome.lines.map((each) => [...each.text].length))).toBeLessThanOrEqual(80);
});

test('a fault of ours is thrown on, not told as a fault of the input', async () => {
  const broken = command({
    name: 'broken',
    summary: '',
    description: '',
    arguments: {},
    flags: {},
    examples: [],
    whenAllowed: always,
    perform: async () => {
      throw new Broken('two and two are four', { found: 5 });
    },
  });
  await expect(done(broken, {})).rejects.toThrow('two and two are four');
});

test('a command that is not allowed here says why', async () => {
  const refusing = {
    ...commands[0]!,
    whenAllowed: { words: 'on Sundays only', hindrance: async () => 'It is Monday.' },
  };
  const outcome = await done(refusing, { plant: pumpPath });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain('expected this command on Sundays only. It is Monday.');
});

test('completeness: every command has a summary of one line, a description and examples that name it', () => {
  expect(new Set(commands.map((each) => each.name)).size).toBe(commands.length);
  for (const each of commands) {
    expect(each.summary, each.name).toMatch(/^[^.\n]{10,80}$/);
    expect(each.description.length, each.name).toBeGreaterThan(60);
    expect(each.examples.length, each.name).toBeGreaterThan(0);
    for (const example of each.examples) expect(example).toMatch(new RegExp(`(soundpost|npm run) ${each.name}\\b`));
  }
});

test('law: whatever is asked, JSON can be written of it and every number with a unit says what is shown', async () => {
  const outcome = await done(prove, { plant: pumpPath });
  const seen = { numbers: 0 };
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === 'object' && value !== null) {
      if ('unit' in value && 'value' in value) {
        seen.numbers++;
        expect(value).toMatchObject({ value: expect.any(Number), unit: expect.any(String), shown: expect.any(String) });
      }
      Object.values(value).forEach(walk);
    } else if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  };
  walk(JSON.parse(JSON.stringify(outcome.json)));
  expect(seen.numbers).toBeGreaterThan(200);
});
