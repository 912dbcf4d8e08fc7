import { source } from './source.ts';

export const seismometryNotes = source({
  id: 'seismometry-notes',
  title: 'Wielandt, seismometry lecture notes',
  how: 'read',
  note: 'Response of the moving-coil velocity sensor.',
});
