import { source } from './source.ts';

export const antoniRandall2003 = source({
  id: 'antoni-randall-2003',
  title:
    'Antoni and Randall, A stochastic model for simulation and diagnostics of rolling element bearings with localized faults, Journal of Vibration and Acoustics 125(3), 2003',
  how: 'from memory',
  note: 'Intervals between blows vary at random by about a per cent and add up, so the blows are not periodic; the variation here is our reading of it.',
});
