import { harris1978 } from '../../source/harris-1978.ts';
import { clause } from '../../source/source.ts';
import { kaiserBessel, windowKind } from './window.ts';

export const kaiserBessel3Point5 = windowKind({
  kind: 'kaiser-bessel-3.5',
  name: 'Kaiser-Bessel, α = 3.5',
  use: 'lines of unlike size close together',
  weight: kaiserBessel(3.5),
  sources: [clause(harris1978, 'Table I')],
});
