import { source } from './source.ts';

export const helicopterGearbox = source({
  id: 'helicopter-gearbox',
  title: 'NASA reports on a helicopter main gearbox',
  how: 'from memory',
  note: '6060 r/min in; bevel 19/71; sun 27, ring 99 fixed; rotor 347.5 r/min.',
});
