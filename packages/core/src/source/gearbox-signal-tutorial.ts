import { source } from './source.ts';

export const gearboxSignalTutorial = source({
  id: 'gearbox-signal-tutorial',
  title: 'Published signal-processing tutorial on gearbox vibration',
  how: 'from memory',
  note: 'Inner-ring frequency 104.4889 Hz of an angular-contact bearing at 22.5 Hz.',
});
