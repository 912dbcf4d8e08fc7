import { source } from './source.ts';

export const jcgm100 = source({
  id: 'jcgm-100',
  title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement',
  how: 'second-hand',
  note: 'Law of propagation, effective degrees of freedom (Welch-Satterthwaite, G.4.1), coverage factors, examples H.1 and H.2; read in public test files that quote them.',
});
