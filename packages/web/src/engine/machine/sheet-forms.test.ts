import { readdirSync, readFileSync } from 'node:fs';
import { kindOf } from '@soundpost/core';
import { applyEdits } from '@soundpost/files';
import { expect, test } from 'vitest';
import { type CatalogueTexts, plantFrom } from '../read-plant.ts';
import { sheetForms } from './sheet-forms.ts';
import { statementEdits } from './statement-edits.ts';

const root = new URL('../../../../../', import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), 'utf8');
const catalogues: CatalogueTexts = {
  generic: { path: 'generic.yaml', text: text('packages/files/catalogues/generic.yaml') },
};
const plants = readdirSync(new URL('examples/', root)).filter((name) =>
  readdirSync(new URL(`examples/${name}/`, root)).includes('plant.yaml'),
);

const formsOf = (plant: string) =>
  plantFrom(plant, 'plant.yaml', catalogues).machines.flatMap((machine) => sheetForms(machine, {}));

test.each(plants)('law: in %s every field of every element has a place to be typed, and none is made up', (name) => {
  const { machines } = plantFrom(text(`examples/${name}/plant.yaml`), 'plant.yaml', catalogues);
  for (const machine of machines) {
    const forms = sheetForms(machine, {});
    for (const element of machine.train.elements) {
      const form = forms.find((each) => each.key === `element/${element.name}`)!;
      expect(form.fields).toHaveLength(Object.keys(kindOf(element).sheet).length);
    }
  }
});

test.each(plants)('law: in %s a field stated from another source is stated so when the file is read again', (name) => {
  const before = text(`examples/${name}/plant.yaml`);
  const forms = formsOf(before);
  expect(forms.length).toBeGreaterThan(2);
  for (const [at, form] of forms.entries()) {
    for (const [index, field] of form.fields.entries()) {
      if (field.statement.value === '') continue;
      const typed = { ...field.statement, status: 'certificate', source: 'page 3, by hand: "new"' };
      const made = applyEdits(before, statementEdits(field, typed));
      expect(formsOf(made.text)[at]!.fields[index]!.statement).toEqual(typed);
      expect(applyEdits(made.text, made.undo).text).toBe(before);
    }
  }
});
