import { source } from './source.ts';

export const phm2012Bearing = source({
  id: 'phm-2012-bearing',
  title: 'IEEE PHM 2012 challenge, details document, appendix A.1',
  how: 'read',
  note: 'Geometry only: 13 elements of 3.5 mm, race diameters 29.1 and 22.1 mm, pitch diameter 25.6 mm.',
});
