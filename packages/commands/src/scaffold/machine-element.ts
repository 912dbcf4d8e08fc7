import { exportedFrom, keyedIn, listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/machine';

export const machineElementScaffold: Scaffold = {
  word: 'machine-element',
  meaning: 'a kind of machine element, with the frequencies it makes',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [
    listedIn(`${folder}/kinds.ts`, 'machineElementKinds', camel, `./${kebab}.ts`),
    exportedFrom(`${folder}/index.ts`, `./${kebab}.ts`),
    keyedIn('packages/documents/src/machine/element-symbols.ts', 'symbols', kebab, 'plainBody'),
  ],
};

const source = ({ kebab, camel, title }: Names) => `import { ask, countField } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { couplesNothing, machineElementKind } from './element.ts';
import { counted, turning } from './form.ts';

const sources = [clause(tradePractice)];

export const ${camel}Sheet = {
  parts: countField('Parts that pass once per turn', { symbol: 'n', example: '6' }),
} as const;

export const ${camel} = machineElementKind({
  kind: '${kebab}',
  name: '${title}',
  sheet: ${camel}Sheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place) => [
    {
      name: 'pass',
      meaning: 'Pass of the parts: their number times the speed',
      form: ask(sheet, ['parts'], ({ parts }) => [counted(parts, turning(place.shafts.on))]),
      sources,
    },
  ],
  doubts: () => [],
  sources,
});
`;

const test = ({ kebab }: Names) => `import { expect, test } from 'vitest';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type Typed } from './reading.ts';

function passOf(parts: Typed) {
  const table = frequencyTable(
    readTrain({
      of: 'M-1',
      shafts: ['main'],
      elements: { it: { kind: '${kebab}', on: 'main', parts } },
      operation: { shaft: 'main', speed: '1500 r/min' },
    }),
  );
  const cells = table.rows.find((row) => row.line.name === 'it/pass')?.cells ?? [];
  return cells.find((cell) => cell.state === 'highest')?.frequency;
}

test('hand calculation: six parts at 1500 r/min pass 150 times a second', () => {
  expect(passOf('6')).toEqual({ known: true, value: 150 });
});

test('parts that nobody has counted stay unknown, by name', () => {
  expect(passOf('unknown')).toEqual({ known: false, missing: [{ of: 'M-1/it', what: 'parts' }] });
});

test.todo('${kebab} beside a number printed by somebody else, with its source');
`;
