import { nuttall1981 } from '../../source/nuttall-1981.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const nuttall4c = windowKind({
  kind: 'nuttall-4c',
  name: 'Nuttall 4c',
  use: 'lines that differ by up to 98 dB',
  weight: cosineSum(0.3635819, 0.4891775, 0.1365995, 0.0106411),
  sources: [clause(nuttall1981, 'minimum 4-term')],
});
