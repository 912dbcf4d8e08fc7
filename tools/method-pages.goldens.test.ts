import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as core from '../packages/core/src/index.ts';
import * as files from '../packages/files/src/index.ts';
import { methodPages, writePages } from './method-pages.mjs';

const folder = new URL('../docs/method/', import.meta.url);
const pages = methodPages(core, files);
if (process.env.UPDATE_GOLDENS === '1') writePages(pages);

test('golden: docs/method is what the workings say, page by page; npm run docs writes it anew', () => {
  expect(readdirSync(folder).sort()).toEqual(Object.keys(pages).sort());
  const old = Object.entries(pages).filter(([name, page]) => readFileSync(new URL(name, folder), 'utf8') !== page);
  expect(old.map(([name]) => name)).toEqual([]);
});

test('every working has a section with formula, validity, source and a worked example', () => {
  const all = Object.values(pages).join('\n');
  for (const { name, title, outputs, sources } of core.workings) {
    const start = all.indexOf(`<a id="${name}"></a>`);
    expect(start, name).toBeGreaterThan(0);
    const next = all.indexOf('<a id=', start + 1);
    const section = all.slice(start, next < 0 ? undefined : next);
    expect(section).toContain(title);
    for (const { formula } of Object.values(outputs as core.Outputs))
      expect(section, name).toContain(formula.replace(/\|/g, '\\|'));
    for (const each of sources) expect(section, name).toContain(core.showClause(each));
    expect(section, name).toContain(`soundpost work ${name}`);
    expect(section, name).not.toMatch(/undefined|NaN|Infinity|\[object/);
  }
  expect(pages['README.md']!.match(/soundpost work NAME/)).not.toBeNull();
});
