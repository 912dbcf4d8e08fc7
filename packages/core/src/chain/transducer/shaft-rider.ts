import { aboveZeroField, ask, optional, quantityField, type Sheet, textField } from '../../quantity/index.ts';
import { seismometryNotes, tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { coilModel, coilSheet } from './coil.ts';
import { settlingOf } from './mounted.ts';
import { commonTransducerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...coilSheet,
  surfaceSpeed: aboveZeroField(
    quantityField('velocity', 'Highest surface speed of the shaft under its tip', { example: '60 m/s' }),
  ),
  wear: optional(textField('What wears, and when it is looked after')),
} as const;

/** A rod pressed on the shaft by a spring, with a moving coil on it: the shaft in space, as long as the tip follows. */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  const coil = coilModel(sheet);
  return {
    senses: 'velocity',
    reference: 'shaft-absolute',
    feed: 'self-generating',
    signal: 'dynamic',
    ...coil,
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    surfaceSpeed: ask(sheet, ['surfaceSpeed'], (s) => s.surfaceSpeed as number),
    assumptions: [
      ...coil.assumptions,
      'The tip follows the shaft without lifting off, up to the highest frequency of the data sheet.',
      'A contacting part wears, and sticks in dust or without oil.',
    ],
  };
}

export const shaftRider = transducerKind({
  kind: 'shaft-rider',
  name: 'Shaft rider (spring-loaded rod with moving coil)',
  senses: 'velocity',
  dataSheet,
  model,
  sources: [
    clause(tradePractice, 'contact, wear, dust'),
    clause(seismometryNotes, 'response of the electromagnetic seismometer'),
  ],
});
