import { textOf } from '@soundpost/commands';
import { Broken } from '@soundpost/core';
import { expect, test } from 'vitest';
import { apology } from './apology.ts';

test('a fault of ours is one plain sentence with what is needed to reproduce it', () => {
  const said = textOf(apology(new Broken('two and two are four', { found: 5 }), false)).replace(/\s+/g, ' ');
  expect(said).toMatch(/^Soundpost itself failed here.* two and two are four \(\{"found":5\}\)\. Please report it/);
  expect(said).not.toContain('apology.test.ts');
});

test('where it happened is shown on wish only', () => {
  expect(textOf(apology(new Error('lost'), true))).toContain('apology.test.ts');
});

test('whatever is thrown is told', () => {
  expect(textOf(apology('a word', true))).toContain('a word');
});
