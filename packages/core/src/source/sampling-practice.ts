import { source } from './source.ts';

export const samplingPractice = source({
  id: 'sampling-practice',
  title: 'Analyser practice: 2.56 samples per line, T = lines / Fmax',
  how: 'common practice, no source',
  note: 'Follows from an anti-alias filter that uses the lower 78 % of the Nyquist band.',
});
