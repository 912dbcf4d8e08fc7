import { source } from './source.ts';

export const iso1683 = source({
  id: 'iso-1683',
  title: 'ISO 1683:2015, Preferred reference values for acoustical and vibratory levels',
  how: 'from memory',
  note: '1e-6 m/s2, 1e-9 m/s, 1e-12 m.',
});
