import { source } from './source.ts';

export const iso10816x7edition2009 = source({
  id: 'iso-10816-7-2009',
  title: 'ISO 10816-7:2009, Rotodynamic pumps for industrial applications',
  how: 'from memory',
  note: 'Only the title page was read; zone boundaries from memory.',
});
