import { source } from './source.ts';

export const harris1978 = source({
  id: 'harris-1978',
  title:
    'Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66(1), 1978',
  how: 'from memory',
  note: 'Table I: coherent gain, equivalent noise bandwidth, scalloping loss, side lobes.',
});
