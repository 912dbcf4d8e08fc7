import { source } from './source.ts';

export const chargeAmplifier = source({
  id: 'charge-amplifier',
  title: 'Relations of the charge amplifier, any text on measuring electronics',
  how: 'from memory',
  note: 'Sensitivity, lower corner, noise gain and the error of a finite gain.',
});
