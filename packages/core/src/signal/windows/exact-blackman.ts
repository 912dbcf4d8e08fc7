import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const exactBlackman = windowKind({
  kind: 'exact-blackman',
  name: 'Exact Blackman',
  use: 'as Blackman, with its two nearest side lobes cancelled',
  weight: cosineSum(7938 / 18608, 9240 / 18608, 1430 / 18608),
  sources: [clause(harris1978)],
});
