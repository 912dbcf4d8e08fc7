import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { kaiserBessel, windowKind } from './window.ts';

export const kaiserBessel3 = windowKind({
  kind: 'kaiser-bessel-3',
  name: 'Kaiser-Bessel, α = 3.0',
  use: 'lines of unlike size close together',
  weight: kaiserBessel(3),
  sources: [clause(harris1978, 'Table I')],
});
