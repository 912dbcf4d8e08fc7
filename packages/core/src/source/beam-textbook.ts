import { source } from './source.ts';

export const beamTextbook = source({
  id: 'beam-textbook',
  title: 'Bending of slender beams, as in any textbook of vibration',
  how: 'from memory',
  note: 'Cantilever: first root of 1 + cos λ cosh λ is λ = 1.8751, λ² = 3.516; massless with an end mass √(3EI/(mL³)). Elastic moduli and densities of common metals.',
});
