import { source } from './source.ts';

export const nrelGearbox = source({
  id: 'nrel-gearbox',
  title: 'NREL/TP-5000-51885, gearbox reliability collaborative',
  how: 'from memory',
  note: 'Tooth counts of the test gearbox, ratio 81.49 and 1800 r/min; only the cover page was read.',
});
