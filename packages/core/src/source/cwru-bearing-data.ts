import { source } from './source.ts';

export const cwruBearingData = source({
  id: 'cwru-bearing-data',
  title: 'Case Western Reserve University, Bearing Data Center: bearing information, drive end and fan end',
  how: 'second-hand',
  note: 'Multiples of shaft speed and frequencies at 1797 r/min; its "rolling element" is twice the element spin, and its cage 0.39828 differs from the rounded dimensions by 3e-5.',
});
