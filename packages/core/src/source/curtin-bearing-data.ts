import { source } from './source.ts';

export const curtinBearingData = source({
  id: 'curtin-bearing-data',
  title: 'Forbes, inner and outer race fault data set of Curtin University, read-me file, 2012',
  how: 'read',
  note: 'Geometry and multiples of shaft speed of the set bearing.',
});
