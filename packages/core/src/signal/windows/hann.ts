import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const hann = windowKind({
  kind: 'hann',
  name: 'Hann',
  use: 'running machines; the usual choice',
  weight: cosineSum(0.5, 0.5),
  sources: [clause(harris1978, 'Table I')],
});
