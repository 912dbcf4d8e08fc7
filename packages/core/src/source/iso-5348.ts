import { source } from './source.ts';

export const iso5348 = source({
  id: 'iso-5348',
  title: 'ISO 5348, Mechanical mounting of accelerometers',
  how: 'second-hand',
  note: 'Only the scope was read; advice on the mounted resonance through an extract in AS ISO 5349.2:2013, 6.1.2.3.',
});
