import { source } from './source.ts';

export const broch1984 = source({
  id: 'broch-1984',
  title: 'Broch, Mechanical vibration and shock measurements, 2nd ed., 1984',
  how: 'from memory',
  note: 'Typical mounted resonances of one general-purpose accelerometer, order of magnitude only; 10 % rule of mass loading.',
});
