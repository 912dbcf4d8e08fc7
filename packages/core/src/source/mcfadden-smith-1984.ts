import { source } from './source.ts';

export const mcFaddenSmith1984 = source({
  id: 'mcfadden-smith-1984',
  title:
    'McFadden and Smith, Model for the vibration produced by a single point defect in a rolling element bearing, Journal of Sound and Vibration 96(1), 1984',
  how: 'from memory',
  note: 'Blows at the passing frequency, weighed by the load at the place of the spot, each ringing a mode of the structure.',
});
