import { source } from './source.ts';

export const jcgm102 = source({
  id: 'jcgm-102',
  title: 'JCGM 102:2011, Extension to any number of output quantities',
  how: 'from memory',
  note: 'Joint distribution of simultaneous readings (multivariate t); the draft of correlated normal numbers by Cholesky factor.',
});
