import { dAntonaFerrero2006 } from '../../source/d-antona-ferrero-2006.ts';
import { clause } from '../../source/source.ts';
import { cosineSum, windowKind } from './window.ts';

export const flatTop5Term = windowKind({
  kind: 'flat-top-5-term',
  name: 'Flat-top, five terms',
  use: 'reading the amplitude of a separate line, calibration',
  weight: cosineSum(0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368),
  sources: [clause(dAntonaFerrero2006)],
});
