import { keyedIn, listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/chain/mount';
const drawn = 'packages/documents/src/chain';

export const mountKindScaffold: Scaffold = {
  word: 'mount-kind',
  meaning: 'a kind of mount: a spring under the moved mass',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [
    listedIn(`${folder}/kinds.ts`, 'mountKinds', camel, `./${kebab}.ts`),
    keyedIn(`${drawn}/part-symbols.ts`, 'symbols', kebab, 'screw'),
    keyedIn(`${drawn}/key-fields.ts`, 'keys', kebab, "['stiffness', 'addedMass']"),
  ],
};

const source = ({ kebab, camel, title }: Names) => `import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { elasticMount } from './mount-kind.ts';

export const ${camel} = elasticMount({
  kind: '${kebab}',
  name: '${title}',
  cautions: ['State here what the fitter must see to, and what commonly goes wrong.'],
  sources: [clause(tradePractice)],
});
`;

const test = ({ kebab, camel }: Names) => `import { expect, test } from 'vitest';
import { readSheet } from '../../machine/reading.ts';
import { ${camel} } from './${kebab}.ts';

function modelOf(fields: Readonly<Record<string, string>>) {
  const sheet = readSheet(${camel}.dataSheet, 'mount of the test', 'test', fields);
  return ${camel}.model(sheet as Parameters<typeof ${camel}.model>[0]);
}

test('the model of ${kebab} carries stiffness and mass of its sheet, and misses what is not stated', () => {
  const model = modelOf({ stiffness: '3e8..5e8 N/m', 'added-mass': '50 g' });
  expect(model.stiffness).toMatchObject({ known: true, value: { low: 3e8, high: 5e8 } });
  expect(model.addedMass).toMatchObject({ known: true, value: 0.05 });
  const missing = [{ of: 'mount of the test', what: 'stiffness' }];
  expect(modelOf({ 'added-mass': '50 g' }).stiffness).toEqual({ known: false, missing });
});

test.todo('${kebab} beside a mounted resonance printed by somebody else, with its source');
`;
