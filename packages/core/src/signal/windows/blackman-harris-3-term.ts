import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const blackmanHarris3Term = windowKind({
  kind: 'blackman-harris-3-term',
  name: 'Blackman-Harris, three terms',
  use: 'lines of very unlike size',
  weight: cosineSum(0.42323, 0.49755, 0.07922),
  sources: [clause(harris1978, 'Table I, minimum 3-sample')],
});
