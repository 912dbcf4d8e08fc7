import { source } from './source.ts';

export const iso10816x3edition2009 = source({
  id: 'iso-10816-3-2009',
  title: 'ISO 10816-3:2009, Industrial machines above 15 kW',
  how: 'from memory',
  note: 'Zone boundaries of groups 1 and 2; velocities also second-hand. Alarm rule of clause 5.4.1 second-hand.',
});
