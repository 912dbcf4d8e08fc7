import { exportedFrom, listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/chain/formulas';

export const workingScaffold: Scaffold = {
  word: 'working',
  meaning: 'a formula of the measuring chain: calculator, documentation and screen in one',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [
    listedIn(`${folder}/index.ts`, 'chainWorkings', `${camel}Working`, `./${kebab}.ts`),
    exportedFrom(`${folder}/index.ts`, `./${kebab}.ts`),
  ],
};

const source = ({
  kebab,
  camel,
  title,
}: Names) => `import { type Frequency, quantityField, si } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** Corner of a resistance and a capacitance, in hertz: f = 1/(2π·R·C). Holds for one pole. Source: any textbook. */
export function ${camel}(resistance: number, capacitance: number): Frequency {
  aboveZero({ resistance, capacitance });
  const [R, C] = [resistance, capacitance];
  return si('frequency', 1 / (2 * Math.PI * R * C));
}

export const ${camel}Working = working({
  name: '${kebab}',
  title: '${title}',
  inputs: {
    resistance: quantityField('resistance', 'Resistance', { symbol: 'R', example: '1 Mohm' }),
    capacitance: quantityField('capacitance', 'Capacitance', { symbol: 'C', example: '1 uF' }),
  },
  outputs: { corner: output(quantityField('frequency', 'Corner', { symbol: 'f' }), 'f = 1/(2π·R·C)') },
  holds: 'one pole; say here where your formula holds and what it leaves out',
  sources: [clause(tradePractice)],
  evaluate: ({ resistance, capacitance }) => ({ corner: ${camel}(resistance, capacitance) }),
  example: { resistance: '1 Mohm', capacitance: '1 uF' },
});
`;

const test = ({ kebab, camel }: Names) => `import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { ${camel}, ${camel}Working } from './${kebab}.ts';

test('hand calculation: 1 MΩ and 1 µF give 1/(2π) Hz', () => {
  expect(${camel}(1e6, 1e-6)).toBeCloseTo(1 / (2 * Math.PI), 12);
});

test('the example of ${kebab} can be run as it stands', () => {
  expect(calculate(${camel}Working, ${camel}Working.example).results).toHaveLength(1);
});

test('${kebab} refuses what is not above zero', () => {
  expect(() => ${camel}(0, 1e-6)).toThrow(Refusal);
});

test.todo('${kebab} beside a number printed by somebody else: add it to the evidence of the room');
`;
