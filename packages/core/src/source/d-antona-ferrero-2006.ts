import { source } from './source.ts';

export const dAntonaFerrero2006 = source({
  id: 'd-antona-ferrero-2006',
  title: "D'Antona and Ferrero, Digital signal processing for measurement systems, 2006",
  how: 'second-hand',
  note: 'Coefficients of the five-term flat-top, as general-purpose signal libraries quote them.',
});
