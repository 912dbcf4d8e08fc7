import { iso5348 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { elasticMount } from './mount-kind.ts';

export const isolatingStud = elasticMount({
  kind: 'isolating-stud',
  name: 'Electrically isolating stud',
  cautions: [
    'Its plastic layer is a spring: the resonance is lower than on a steel stud.',
    'Check the insulation after tightening.',
  ],
  isolates: true,
  sources: [clause(iso5348)],
});
