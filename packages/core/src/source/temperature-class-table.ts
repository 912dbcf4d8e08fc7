import { source } from './source.ts';

export const temperatureClassTable = source({
  id: 'temperature-class-table',
  title: 'Temperature classes, a trade table and a manual',
  how: 'second-hand',
  note: 'Highest surface temperatures of T1 to T6 and of the American sub-classes.',
});
