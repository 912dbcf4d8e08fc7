import { source } from './source.ts';

export const planetaryPhasing = source({
  id: 'planetary-phasing',
  title:
    'McFadden and Smith 1985, asymmetry of the side lines about the mesh of an epicyclic gear; McFadden 1991, time averages of its planets',
  how: 'from memory',
  note: 'At the ring only whole multiples of the planet count stand out, in orders of the carrier; windows repeat when the same teeth meet again. Checked here by adding up planets that pass a point.',
});
