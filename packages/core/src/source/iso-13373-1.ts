import { source } from './source.ts';

export const iso13373x1 = source({
  id: 'iso-13373-1',
  title: 'ISO 13373-1, Condition monitoring: vibration, general procedures',
  how: 'from memory',
  note: 'Measuring positions by kind of machine, in outline only.',
});
