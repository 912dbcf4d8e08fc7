import { answerOf } from '../../quantity/index.ts';
import { iso5348 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { mountKind, rigidMountSheet } from './mount-kind.ts';

/** A steel stud in a spot face: the mount the data-sheet resonance was measured on. */
export const stud = mountKind({
  kind: 'stud',
  name: 'Steel stud in a spot face',
  dataSheet: rigidMountSheet,
  cautions: [
    'Drill square, tap deep enough that the stud does not bottom: a bottomed stud feels tight and is loose.',
    'A film of grease on a flat, clean face; the stated torque, no more.',
    'Ask before drilling: a housing may be pressurised, thin or under warranty.',
  ],
  sources: [clause(iso5348)],
  model: (sheet) => ({
    of: sheet.of,
    stiffness: undefined,
    addedMass: answerOf(sheet.values.addedMass, sheet.of, 'added mass'),
    temperature:
      sheet.values.temperature === undefined ? undefined : answerOf(sheet.values.temperature, sheet.of, 'temperature'),
    isolates: false,
  }),
});
