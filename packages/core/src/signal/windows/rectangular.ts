import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const rectangular = windowKind({
  kind: 'rectangular',
  name: 'Rectangular',
  use: 'records that hold whole periods, and impacts that die out within the record',
  weight: cosineSum(1),
  sources: [clause(harris1978, 'Table I')],
});
