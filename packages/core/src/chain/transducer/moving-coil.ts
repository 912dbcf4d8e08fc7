import type { Sheet } from '../../quantity/index.ts';
import { seismometryNotes } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { coilModel, coilSheet } from './coil.ts';
import { settlingOf } from './mounted.ts';
import { commonTransducerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = { ...commonTransducerSheet, ...coilSheet } as const;

/**
 * Coil on springs: H = −r²/(1 − r² + 2jζr) of the velocity, r = f/f₀; its stops limit the displacement. The coil is
 * wired so that the case moving towards positive gives a positive voltage, hence the sign: in phase far above f₀.
 */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  return {
    senses: 'velocity',
    reference: 'casing',
    feed: 'self-generating',
    signal: 'dynamic',
    ...coilModel(sheet),
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
  };
}

export const movingCoil = transducerKind({
  kind: 'moving-coil',
  name: 'Moving-coil velocity transducer',
  senses: 'velocity',
  dataSheet,
  model,
  sources: [
    clause(seismometryNotes, 'response of the electromagnetic seismometer'),
    clause(seismometryNotes, 'damping by a shunt', 'from memory'),
  ],
});
