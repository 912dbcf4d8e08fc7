import { source } from './source.ts';

export const clopperPearson1934 = source({
  id: 'clopper-pearson-1934',
  title:
    'Clopper and Pearson, The use of confidence or fiducial limits illustrated in the case of the binomial, Biometrika 26(4), 1934',
  how: 'from memory',
  note: 'The interval of a share from so many of so many, by quantiles of the beta distribution; never narrower than its level.',
});
