import { source } from './source.ts';

export const conversionNotes = source({
  id: 'conversion-notes',
  title: 'Constants for converting sinusoidal vibration, trade notes without author',
  how: 'second-hand',
  note: 'They round the acceleration of gravity and differ among themselves by up to 0.06 %.',
});
