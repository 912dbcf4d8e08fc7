import { source } from './source.ts';

export const jcgm101 = source({
  id: 'jcgm-101',
  title: 'JCGM 101:2008, Propagation of distributions using a Monte Carlo method',
  how: 'second-hand',
  note: 'Trials, shortest coverage interval, examples 9.2 to 9.4; 9.3 and 9.4 from memory.',
});
