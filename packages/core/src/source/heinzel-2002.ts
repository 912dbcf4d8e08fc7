import { source } from './source.ts';

export const heinzel2002 = source({
  id: 'heinzel-2002',
  title: 'Heinzel, Ruediger and Schilling, Spectrum and spectral density estimation by the DFT, 2002',
  how: 'second-hand',
  note: 'Coefficients of the flat-top HFT95, as public code quotes them; only its list of contents was read.',
});
