import { heinzel2002 } from '../../source/heinzel-2002.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, toTopOfOne, windowKind } from './window.ts';

export const flatTopHft95 = windowKind({
  kind: 'flat-top-hft95',
  name: 'Flat-top HFT95',
  use: 'reading the amplitude of a separate line within 0.05 %',
  weight: cosineSum(...toTopOfOne(1, 1.9383379, 1.3045202, 0.402827, 0.0350665)),
  sources: [clause(heinzel2002, 'HFT95')],
});
