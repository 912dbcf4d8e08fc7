import { source } from './source.ts';

export const mfptBearingData = source({
  id: 'mfpt-bearing-data',
  title: 'Society for Machinery Failure Prevention Technology, bearing fault data set',
  how: 'from memory',
  note: 'Geometry and ball-pass frequencies at 25 Hz.',
});
