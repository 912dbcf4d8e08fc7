import { listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/chain/mount';

export const mountKindScaffold: Scaffold = {
  word: 'mount-kind',
  meaning: 'a kind of mount: a spring under the moved mass',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [listedIn(`${folder}/kinds.ts`, 'mountKinds', camel, `./${kebab}.ts`)],
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
import { si, stated } from '../../quantity/index.ts';
import { ${camel} } from './${kebab}.ts';

const values = {
  stiffness: stated({ low: si('stiffness', 3e8), high: si('stiffness', 5e8) }),
  addedMass: stated(si('mass', 0.05)),
  temperature: undefined,
  preparation: undefined,
  remark: undefined,
};

test('the model of ${kebab} carries the stiffness and mass of its sheet, and misses what is not stated', () => {
  const model = ${camel}.model({ of: 'mount of the test', values });
  expect(model.stiffness).toMatchObject({ known: true, value: { low: 3e8, high: 5e8 } });
  expect(model.addedMass).toMatchObject({ known: true, value: 0.05 });
  const bare = ${camel}.model({ of: 'mount of the test', values: { ...values, stiffness: { known: false } } });
  expect(bare.stiffness).toEqual({ known: false, missing: [{ of: 'mount of the test', what: 'stiffness' }] });
});

test.todo('${kebab} beside a mounted resonance printed by somebody else, with its source');
`;
