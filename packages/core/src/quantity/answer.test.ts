import { expect, test } from 'vitest';
import { type Answer, answer, askMissing, fromAll, theMissing, thenAnswer, unanswered } from './answer.ts';
import { camel, kebab, words } from './names.ts';
import { quantityField } from './quantity-field.ts';
import {
  answerOf,
  ask,
  fieldOf,
  isOptional,
  notStated,
  optional,
  type Sheet,
  stated,
  valueIfStated,
} from './stated.ts';

const unknown = (what: string): Answer<number> => unanswered([{ of: 'sensor A', what }]);

test('law: an answer from several is known when all are, and otherwise names everything missing once', () => {
  expect(fromAll({ a: answer(2), b: answer(3) }, ({ a, b }) => a * b)).toEqual(answer(6));
  const twice = fromAll({ a: unknown('bias'), b: answer(1), c: unknown('mass'), d: unknown('bias') }, () => 0);
  expect(twice).toEqual({
    known: false,
    missing: [
      { of: 'sensor A', what: 'bias' },
      { of: 'sensor A', what: 'mass' },
    ],
  });
});

test('law: a computation on an unknown stays unknown and is not run', () => {
  expect(thenAnswer(answer(2), (value) => answer(value + 1))).toEqual(answer(3));
  expect(thenAnswer(answer(2), () => unknown('mass'))).toEqual(unknown('mass'));
  expect(
    thenAnswer(unknown('bias'), () => {
      throw new Error('must not run');
    }),
  ).toEqual(unknown('bias'));
});

test('law: what a sheet does not state comes back by name, never as zero', () => {
  const fields = {
    mountedResonance: quantityField('frequency', 'Mounted resonance'),
    mass: quantityField('mass', 'Mass'),
    leakage: optional(quantityField('resistance', 'Leakage')),
  };
  const sheet: Sheet<typeof fields> = {
    of: 'sensor A',
    values: {
      mountedResonance: stated(27_000 as never, '27 kHz', 'data sheet', 'page 2'),
      mass: notStated,
      leakage: undefined,
    },
  };
  expect(ask(sheet, ['mountedResonance'], ({ mountedResonance }) => mountedResonance / 3)).toEqual(answer(9000));
  expect(ask(sheet, ['mountedResonance', 'mass'], () => 0)).toEqual({
    known: false,
    missing: [{ of: 'sensor A', what: 'mass' }],
  });
  expect(answerOf(sheet.values.mass, 'sensor A', 'mass').known).toBe(false);
  expect(answerOf(undefined, 'sensor A', 'leakage')).toEqual(unanswered([{ of: 'sensor A', what: 'leakage' }]));
  expect(answerOf(sheet.values.mountedResonance, 'sensor A', 'x')).toEqual(answer(27_000));
  expect(valueIfStated(sheet.values.leakage)).toBeUndefined();
  expect(valueIfStated(sheet.values.mountedResonance)).toBe(27_000);
  expect(isOptional(fields.leakage)).toBe(true);
  expect(fieldOf(fields.leakage).meaning).toBe('Leakage');
  expect(stated(5)).toEqual({ known: true, value: 5, written: '' });
});

test('law: names in code, files and sentences are one name', () => {
  for (const [code, file, sentence] of [
    ['elementDiameter', 'element-diameter', 'element diameter'],
    ['bpfo2', 'bpfo2', 'bpfo2'],
    ['tn4Line', 'tn4-line', 'tn4 line'],
  ] as const) {
    expect(kebab(code)).toBe(file);
    expect(words(code)).toBe(sentence);
    expect(camel(file)).toBe(code);
  }
});

test('what is missing is named with each owner once, and asked for in the same way', () => {
  const missing = [
    { of: 'supply B', what: 'certificate Uo' },
    { of: 'transducer T', what: 'mass' },
    { of: 'supply B', what: 'certificate Co (IIC)' },
  ];
  expect(theMissing(missing)).toBe('the certificate Uo and Co (IIC) of supply B and the mass of transducer T');
  expect(askMissing(missing)).toBe(
    'What are the certificate Uo and Co (IIC) of supply B? What is the mass of transducer T?',
  );
});

test.each([
  ['certificateUo', 'certificate Uo'],
  ['certificateCoIic', 'certificate Co (IIC)'],
  ['certificateLoOverRoIib', 'certificate Lo/Ro (IIB)'],
  ['certificateMarking', 'certificate marking'],
  ['elementDiameter', 'element diameter'],
])('%s reads %s', (name, read) => {
  expect(words(name)).toBe(read);
});
