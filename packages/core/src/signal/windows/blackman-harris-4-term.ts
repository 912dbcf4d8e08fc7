import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const blackmanHarris4Term = windowKind({
  kind: 'blackman-harris-4-term',
  name: 'Blackman-Harris, four terms',
  use: 'lines that differ by up to 90 dB',
  weight: cosineSum(0.35875, 0.48829, 0.14128, 0.01168),
  sources: [clause(harris1978, 'Table I, minimum 4-sample')],
});
