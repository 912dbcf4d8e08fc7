import { source } from './source.ts';

export const nuttall1981 = source({
  id: 'nuttall-1981',
  title: 'Nuttall, Some windows with very good sidelobe behavior, IEEE Trans. ASSP 29(1), 1981',
  how: 'from memory',
  note: 'Coefficients of the minimum four-term window; the same stand in general-purpose signal libraries.',
});
