import { source } from './source.ts';

export const sienaChargeNotes = source({
  id: 'siena-charge-notes',
  title: 'University of Siena, lecture notes on charge amplifiers',
  how: 'read',
  note: 'The capacitance of the cable does not enter the sensitivity; it enters noise and the error of a finite gain.',
});
