import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { kebab, type Shelf, shelves } from '@soundpost/core';
import { applyEdits } from '@soundpost/files';
import { expect, test } from 'vitest';
import { plantFrom } from '../read-plant.ts';
import { partEdits, removalEdits } from './part-edits.ts';
import { type AnyPart, partKinds } from './part-kinds.ts';
import { emptySheet, partViews } from './part-view.ts';
import { shelfViews } from './shelves.ts';
import type { PartTyped } from './views.ts';

const root = resolve(import.meta.dirname, '../../../../..');
const textAt = (path: string) => readFileSync(resolve(root, path), 'utf8');
const catalogues = { generic: { path: 'generic.yaml', text: textAt('packages/files/catalogues/generic.yaml') } };
const plantPath = 'examples/raw-water-pump/plant.yaml';
const opened = (text = textAt(plantPath)) => ({
  texts: { text, catalogues },
  plant: plantFrom(text, plantPath, catalogues),
});

function kept(typed: PartTyped, text?: string) {
  const { plant, texts } = opened(text);
  const made = partEdits(plant, texts, typed);
  if ('refused' in made) throw new Error(JSON.stringify(made.refused));
  return opened(applyEdits(texts.text, made.edits).text);
}

const named = (plant: ReturnType<typeof opened>['plant'], shelf: Shelf, name: string) =>
  (plant.catalogue[shelf] as readonly AnyPart[]).find((each) => each.name === name)!;

const asTyped = (text: string) => ({ text, status: '', source: '' });

test('law: a new entry of every kind, filled with its own examples, is read back as it was typed', () => {
  for (const shelf of shelves) {
    for (const { kind } of partKinds[shelf]) {
      const { fields } = emptySheet(shelf, kind);
      const typed = fields.map((each) => [each.key, asTyped(each.example.replace(/^\{(.*)\}$/, '$1'))] as const);
      const name = `own ${kind}`;
      const { plant } = kept({ shelf, kind, name, changes: undefined, fields: Object.fromEntries(typed) });
      const { sheet } = named(plant, shelf, name);
      const stated = Object.entries(sheet.values).filter(([, each]) => each?.known === true);
      expect(stated.map(([key]) => kebab(key)).sort(), kind).toEqual(fields.map((each) => each.key).sort());
    }
  }
});

test('a changed entry of the catalogue stands in the plant file, hides the other, and keeps what was not touched', () => {
  const typed: PartTyped = {
    shelf: 'transducers',
    kind: 'iepe-accelerometer',
    name: 'ACC-100',
    changes: 'ACC-100',
    fields: {
      mass: { text: '101 g', status: 'measured', source: 'scale: shop, "3"' },
      transverse: asTyped(''),
      quality: asTyped('unknown'),
    },
  };
  const { plant, texts } = kept(typed);
  const { values } = named(plant, 'transducers', 'ACC-100').sheet;
  expect(values.mass).toMatchObject({ known: true, value: 0.101, status: 'measured', source: 'scale: shop, "3"' });
  expect(values.transverse).toBeUndefined();
  expect(values.quality).toEqual({ known: false });
  expect(values.noise).toEqual(named(opened().plant, 'transducers', 'ACC-100').sheet.values.noise);
  const entry = shelfViews(plant, texts)
    .flatMap((each) => each.entries)
    .find((each) => each.name === 'ACC-100');
  expect(entry).toMatchObject({ owner: 'changed', missing: 1, used: 1 });
  const again = kept({ ...typed, fields: { mass: asTyped('102 g') } }, texts.text);
  expect(named(again.plant, 'transducers', 'ACC-100').sheet.values.mass).toMatchObject({ written: '102 g' });
  const removal = removalEdits(again.texts, 'transducers', 'ACC-100');
  if ('refused' in removal) throw new Error('refused');
  expect(applyEdits(again.texts.text, removal.edits).text).not.toContain('parts:');
  expect(named(opened(applyEdits(again.texts.text, removal.edits).text).plant, 'transducers', 'ACC-100')).toEqual(
    named(opened().plant, 'transducers', 'ACC-100'),
  );
});

test('what cannot be read is refused at its field, and a name that stands there already at the name', () => {
  const { plant, texts } = opened();
  const typed: PartTyped = {
    shelf: 'transducers',
    kind: 'iepe-accelerometer',
    name: 'ACC-100',
    changes: undefined,
    fields: { mass: asTyped('95'), range: { text: '', status: 'measured', source: '' }, quality: asTyped('-2') },
  };
  const made = partEdits(plant, texts, typed);
  expect(Object.keys('refused' in made ? made.refused : {}).sort()).toEqual(['mass', 'name', 'quality', 'range']);
});

test('what acts on the screen and does not stand on it is refused at its field', () => {
  const { plant, texts } = opened();
  for (const sign of ['\u202e', '\u0000', '\u200b', '\u2028']) {
    const fields = { remark: asTyped(`a${sign}b`), mass: { text: '2 g/m', status: 'measured', source: `b${sign}c` } };
    const typed = { shelf: 'cables', kind: 'signal-cable', name: `c${sign}d`, changes: undefined, fields } as const;
    const made = partEdits(plant, texts, typed);
    expect(Object.keys('refused' in made ? made.refused : {})).toEqual(expect.arrayContaining(['remark', 'name']));
  }
});

test('an entry says where it is used, and what it leaves open', () => {
  const { plant, texts } = opened();
  const [part] = partViews(plant, texts, 'ACC-100', [], {});
  expect(part?.uses).toEqual([{ of: 'P-301/pump-drive-end-horizontal', place: 'transducer' }]);
  expect(partViews(plant, texts, 'no such part', [], {})).toEqual([]);
});

test('hostile words stay words: no text of a field becomes a key of the file', () => {
  for (const text of ['x\ny: z', '"', "'", '} evil: {', '# no', '- a', 'true', '1e3', '*a', '&a b', '!t', '<script>']) {
    const { plant } = kept({
      shelf: 'cables',
      kind: 'signal-cable',
      name: 'own cable',
      changes: undefined,
      fields: { remark: { text, status: 'assumed', source: text } },
    });
    const stated = named(plant, 'cables', 'own cable').sheet.values.remark;
    expect(stated).toMatchObject({ known: true, value: text.trim(), source: text.trim() });
  }
});
