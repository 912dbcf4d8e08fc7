import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { recordingRules } from './recording-rules.ts';

const tests = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
  .filter((each) => each.endsWith('.test.ts') && !each.startsWith('recording-rules'))
  .map((each) => readFileSync(resolve(import.meta.dirname, each), 'utf8'))
  .join('\n');

test.each(recordingRules.map(({ id }) => id))('%s stands once, and has a recording that breaks it', (id) => {
  expect(recordingRules.filter((each) => each.id === id)).toHaveLength(1);
  expect(tests).toContain(`'${id.replace('recording/', '')}'`);
});
