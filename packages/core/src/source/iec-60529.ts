import { source } from './source.ts';

export const iec60529 = source({
  id: 'iec-60529',
  title: 'IEC 60529, Degrees of protection provided by enclosures (IP code)',
  how: 'from memory',
  note: 'IP66 jets; IP67 1 m for 30 min; IP68 as agreed. IP67 does not imply IP66.',
});
