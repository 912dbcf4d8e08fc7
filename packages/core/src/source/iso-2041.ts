import { source } from './source.ts';

export const iso2041 = source({
  id: 'iso-2041',
  title: 'ISO 2041, Mechanical vibration, shock and condition monitoring: vocabulary',
  how: 'from memory',
  note: 'Terms.',
});
