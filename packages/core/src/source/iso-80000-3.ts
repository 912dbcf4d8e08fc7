import { source } from './source.ts';

export const iso80000x3 = source({
  id: 'iso-80000-3',
  title: 'ISO 80000-3, Quantities and units: space and time',
  how: 'from memory',
  note: 'Standard gravity 9.80665 m/s2 exactly; units of rotation.',
});
