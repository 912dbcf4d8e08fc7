import { source } from './source.ts';

export const tradePractice = source({
  id: 'trade-practice',
  title: 'Practice of the trade',
  how: 'common practice, no source',
  note: 'Starting values and habits, replaced by a certificate or data sheet as soon as one exists.',
});
