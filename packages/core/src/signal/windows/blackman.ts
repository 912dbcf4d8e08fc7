import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const blackman = windowKind({
  kind: 'blackman',
  name: 'Blackman',
  use: 'lines of unlike size some lines apart',
  weight: cosineSum(0.42, 0.5, 0.08),
  sources: [clause(harris1978, 'Table I')],
});
