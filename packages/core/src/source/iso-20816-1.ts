import { source } from './source.ts';

export const iso20816x1 = source({
  id: 'iso-20816-1',
  title: 'ISO 20816-1, Measurement and evaluation of machine vibration: general guidelines',
  how: 'from memory',
  note: 'Alarm: baseline plus 25 % of the B/C boundary, not above 1.25 times it; trip not above 1.25 times C/D. Measuring positions.',
});
