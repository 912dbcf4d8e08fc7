import { source } from './source.ts';

export const namurNe43 = source({
  id: 'namur-ne-43',
  title: 'NAMUR NE 43, Standardisation of the signal level for failure information',
  how: 'second-hand',
  note: 'Measuring 3.8 to 20.5 mA, failure at or below 3.6 and at or above 21 mA; two public articles.',
});
