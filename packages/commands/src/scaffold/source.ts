import { exportedFrom, listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/source';

export const sourceScaffold: Scaffold = {
  word: 'source',
  meaning: 'a standard edition, handbook, paper or data set',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [
    listedIn(`${folder}/sources.ts`, 'sources', camel, `./${kebab}.ts`),
    exportedFrom(`${folder}/index.ts`, `./${kebab}.ts`),
  ],
};

const source = ({ kebab, camel, title }: Names) => `import { source } from './source.ts';

export const ${camel} = source({
  id: '${kebab}',
  title: '${title}',
  how: 'from memory',
  note: 'Say what of it is used here, and any doubt about it.',
});
`;

const test = ({ kebab, camel }: Names) => `import { expect, test } from 'vitest';
import { ${camel} } from './${kebab}.ts';
import { sources } from './sources.ts';

test('${kebab} is in the list of sources, once, and says how it is known', () => {
  expect(sources.filter((each) => each.id === ${camel}.id)).toEqual([${camel}]);
  expect(${camel}.how).not.toBe('');
});
`;
