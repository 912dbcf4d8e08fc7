import { keyedIn, listedIn } from './list-edit.ts';
import type { Names, Scaffold } from './scaffold.ts';

const folder = 'packages/core/src/chain/transducer';
const drawn = 'packages/documents/src/chain';

export const transducerKindScaffold: Scaffold = {
  word: 'transducer-kind',
  meaning: 'a kind of transducer, with its data sheet and its model',
  files: (names) => [
    { path: `${folder}/${names.kebab}.ts`, content: source(names) },
    { path: `${folder}/${names.kebab}.test.ts`, content: test(names) },
  ],
  lists: ({ kebab, camel }) => [
    listedIn(`${folder}/kinds.ts`, 'transducerKinds', camel, `./${kebab}.ts`),
    keyedIn(`${drawn}/part-symbols.ts`, 'symbols', kebab, 'seismic'),
    keyedIn(`${drawn}/key-fields.ts`, 'keys', kebab, "['sensitivity', 'range']"),
  ],
};

const source = ({
  kebab,
  camel,
  title,
}: Names) => `import { ask, curveField, fromAll, levelField, quantityField, type Sheet } from '../../quantity/index.ts';
import { complex, magnitude, product } from '../../signal/complex.ts';
import { highPass } from '../../signal/filters.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { densityAt } from '../formulas/noise.ts';
import { isolatedGain } from '../two-port.ts';
import { settlingOf } from './mounted.ts';
import { commonTransducerSheet, lowCornerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...lowCornerSheet,
  sensitivity: quantityField('voltage per acceleration', 'Nominal sensitivity', { symbol: 'S', example: '100 mV/g' }),
  range: levelField(['acceleration'], 'Largest acceleration it measures', { example: '80 g peak' }),
  usableTo: quantityField('frequency', 'Highest frequency of its data sheet', { example: '10 kHz' }),
  noise: curveField('acceleration density', 'Noise at the output over the sensitivity'),
} as const;

/** A first model: the lower corner times the sensitivity. What it leaves out stands under \`assumptions\`. */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  const corner = ask(sheet, ['lowCorner', 'lowCornerOrder'], (s) => (frequency: number) => {
    return highPass(frequency, s.lowCorner, s.lowCornerOrder);
  });
  return {
    senses: 'acceleration',
    reference: 'casing',
    feed: 'self-generating',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: fromAll({ stated: ask(sheet, ['sensitivity'], (s) => s), corner }, ({ stated, corner: gain }) => [
      {
        name: 'element',
        part: sheet.of,
        enters: 'motion' as const,
        leaves: 'voltage' as const,
        through: (frequency: number) => isolatedGain(product(complex(stated.sensitivity, 0), gain(frequency))),
        noise: ask(sheet, ['noise', 'sensitivity'], ({ noise, sensitivity }) => (frequency: number) => {
          return densityAt(noise, frequency) * sensitivity;
        }),
      },
    ]),
    usableTo: ask(sheet, ['usableTo'], (s) => s.usableTo as number),
    ceilings: [
      fromAll({ range: ask(sheet, ['range'], (s) => s.range), corner }, ({ range, corner: gain }) => ({
        name: 'rated range',
        part: sheet.of,
        motion: 'acceleration' as const,
        peak: range.value,
        gain: (frequency: number) => magnitude(gain(frequency)),
      })),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    assumptions: ['Its output resistance and its mounted resonance are left out.'],
  };
}

export const ${camel} = transducerKind({
  kind: '${kebab}',
  name: '${title}',
  senses: 'acceleration',
  dataSheet,
  model,
  sources: [clause(tradePractice)],
});
`;

const test = ({ kebab, camel }: Names) => `import { expect, test } from 'vitest';
import { readSheet } from '../../machine/reading.ts';
import { answer } from '../../quantity/index.ts';
import { magnitude } from '../../signal/complex.ts';
import { transfer } from '../stage.ts';
import { ${camel} } from './${kebab}.ts';

const rigid = { of: 'stud', stiffness: undefined, addedMass: answer(0), temperature: undefined, isolates: false };
const typed = { sensitivity: '10 mV/(m/s2)', 'low-corner': '1 Hz', 'low-corner-order': '1', range: '80 g peak' };

function modelOf(fields: Readonly<Record<string, string>>) {
  const sheet = readSheet(${camel}.dataSheet, 'transducer of the test', 'test', fields);
  return ${camel}.model(sheet as Parameters<typeof ${camel}.model>[0], rigid);
}

test('law: at its lower corner the response of ${kebab} is down by 3 dB', () => {
  const { stages, sensitivity } = modelOf(typed);
  if (!stages.known || !sensitivity.known) throw new Error('the sheet of the test states everything');
  expect(magnitude(transfer(stages.value, 1)) / sensitivity.value).toBeCloseTo(Math.SQRT1_2, 9);
});

test('what the sheet of ${kebab} does not state is missing, never assumed', () => {
  const { 'low-corner': _left, ...rest } = typed;
  const missing = [{ of: 'transducer of the test', what: 'low corner' }];
  expect(modelOf(rest).stages).toEqual({ known: false, missing });
});

test.todo('${kebab} beside a number printed by somebody else, with its source');
`;
