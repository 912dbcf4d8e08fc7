import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const hamming = windowKind({
  kind: 'hamming',
  name: 'Hamming',
  use: 'near side lobes lower than Hann, far ones higher',
  weight: cosineSum(0.54, 0.46),
  sources: [clause(harris1978, 'Table I')],
});
