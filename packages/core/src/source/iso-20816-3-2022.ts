import { source } from './source.ts';

export const iso20816x3edition2022 = source({
  id: 'iso-20816-3-2022',
  title: 'ISO 20816-3:2022, Industrial machinery above 15 kW, 120 to 30 000 r/min',
  how: 'from memory',
  note: 'Scope read on the title page; boundaries from memory; secondary texts disagree whether zones A and B were merged.',
});
