import { source } from './source.ts';

export const api670 = source({
  id: 'api-670',
  title: 'API 670, Machinery protection systems',
  how: 'from memory',
  note: 'Proximity probes: 7.87 V/mm, 0.25 to 2.25 mm typical linear range; orientation only.',
});
