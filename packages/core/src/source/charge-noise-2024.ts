import { source } from './source.ts';

export const chargeNoise2024 = source({
  id: 'charge-noise-2024',
  title: 'Micromachines 2024, 15(2), 283, noise of charge amplifiers',
  how: 'read',
  note: 'Only the abstract: at low frequency the noise of the feedback resistor governs.',
});
