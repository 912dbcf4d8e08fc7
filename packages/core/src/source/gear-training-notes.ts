import { source } from './source.ts';

export const gearTrainingNotes = source({
  id: 'gear-training-notes',
  title: 'Public training presentation on gears: 2000 r/min, 24 teeth driving 84',
  how: 'second-hand',
  note: 'Output speed 571.4 r/min as printed; the frequencies are computed here.',
});
