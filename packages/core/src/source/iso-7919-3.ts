import { source } from './source.ts';

export const iso7919x3 = source({
  id: 'iso-7919-3',
  title:
    'ISO 7919-3, Vibration of non-reciprocating machines, measurements on rotating shafts: coupled industrial machines',
  how: 'from memory',
  note: 'Boundaries 4800, 9000 and 13200 over the root of the speed in r/min; scope of 1000 to 30 000 r/min second-hand.',
});
