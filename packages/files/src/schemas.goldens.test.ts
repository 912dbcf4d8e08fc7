import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { type Placed, plainOf } from './placed.ts';
import { catalogueSchema, plantSchema, schemas, schemaText, tedsLayoutSchema } from './schemas.ts';
import { textFile } from './text-file.ts';
import { placedYaml } from './yaml-document.ts';

const root = new URL('../../../', import.meta.url);
const fileAt = (path: string) => new URL(path, root);

test.each(Object.entries(schemas))('golden: schemas/%s is current; UPDATE_GOLDENS=1 writes it anew', (name, schema) => {
  const file = fileAt(`schemas/${name}`);
  const text = schemaText(schema());
  if (process.env.UPDATE_GOLDENS === '1') writeFileSync(file, text);
  expect(existsSync(file), `schemas/${name} is missing: npm run goldens`).toBe(true);
  expect(readFileSync(file, 'utf8') === text, `schemas/${name} is not what the readers say: npm run goldens`).toBe(
    true,
  );
});

/** An independent validator of JSON Schema, draft 2020-12; strict, so that a keyword it does not know is an error. */
const ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: true });
const validators = {
  plant: ajv.compile(plantSchema()),
  catalogue: ajv.compile(catalogueSchema()),
  tedsLayout: ajv.compile(tedsLayoutSchema()),
};

/** A YAML file as an editor holds it against a schema. */
function asJson(text: string): unknown {
  const placed: Placed = placedYaml(textFile(new TextEncoder().encode(text), 'file.yaml'));
  return JSON.parse(JSON.stringify(plainOf(placed)));
}

function faults(kind: keyof typeof validators, text: string): readonly string[] {
  const validate = validators[kind];
  return validate(asJson(text)) ? [] : (validate.errors ?? []).map((each) => `${each.instancePath} ${each.message}`);
}

const demoPlant = readFileSync(fileAt('examples/raw-water-pump/plant.yaml'), 'utf8');
const genericCatalogue = readFileSync(fileAt('packages/files/catalogues/generic.yaml'), 'utf8');
const inventedLayout = readFileSync(fileAt('examples/teds/invented-layout.yaml'), 'utf8');

test('independent: the demo plant, the generic catalogue and the invented layout are valid (Ajv, draft 2020-12)', () => {
  expect(faults('plant', demoPlant)).toEqual([]);
  expect(faults('catalogue', genericCatalogue)).toEqual([]);
  expect(faults('tedsLayout', inventedLayout)).toEqual([]);
  expect(faults('tedsLayout', inventedLayout.replace('coding: date', 'coding: day'))).not.toEqual([]);
  expect(faults('plant', genericCatalogue)).not.toEqual([]);
  expect(faults('catalogue', demoPlant)).not.toEqual([]);
});

/** Mistakes that an editor shows while they are typed: what is written instead, and where the validator puts it. */
const mistakes: readonly (readonly [string, keyof typeof validators, string, string, RegExp])[] = [
  ['a key misspelt', 'plant', 'delay: 3 s', 'dely: 3 s', /alarm must/],
  ['a key left out', 'plant', 'revision: A\n', 'name2: A\n', /plant must NOT have additional/],
  ['a number without unit', 'plant', 'delay: 3 s', 'delay: 3', /alarm\/delay/],
  ['an empty cell', 'plant', 'delay: 3 s', 'delay:', /alarm\/delay/],
  ['a kind misspelt', 'plant', 'kind: coupling', 'kind: couplng', /elements\/coupling\/kind must be equal to one of/],
  ['half a vane', 'plant', 'vanes: { value: 6,', 'vanes: { value: 6.5,', /impeller\/vanes/],
  ['no motor has no poles', 'plant', 'poles: { value: 4,', 'poles: { value: 0,', /motor\/poles/],
  [
    'a status that is none',
    'plant',
    'status: nameplate, source: motor plate }\n      support',
    'status: guessed }\n      support',
    /facts\/power/,
  ],
  ['a mapping for a list', 'plant', 'in-line: [LOOP-24]', 'in-line: { LOOP-24: yes }', /in-line must be array/],
  ['a way of looking that is none', 'plant', 'observe: burst', 'observe: bursts', /observe must be equal to one of/],
  ['a date of two days', 'plant', 'date: 2026-11-25', 'date: 11/12/2026', /plant\/date/],
  ['another file', 'plant', 'soundpost: plant', 'soundpost: budget', /soundpost must be equal/],
  ['a field of another kind', 'catalogue', 'quality: 12', 'damping: 0.7', /additional properties|unevaluated/],
  [
    'noise as one number',
    'catalogue',
    'noise:\n      1 Hz: 30 ug/rtHz',
    'noise: 30 ug/rtHz\n    was:\n      1 Hz: 30 ug/rtHz',
    /noise/,
  ],
  ['yes or no, perhaps', 'catalogue', 'case-isolated: yes', 'case-isolated: perhaps', /case-isolated/],
];

test.each(mistakes)('independent: not valid, %s', (_name, kind, from, to, says) => {
  const text = kind === 'plant' ? demoPlant : genericCatalogue;
  expect(text).toContain(from);
  expect(faults(kind, text.replace(from, to)).join('\n')).toMatch(says);
});
