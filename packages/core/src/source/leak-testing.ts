import { source } from './source.ts';

export const leakTesting = source({
  id: 'leak-testing',
  title: 'Practice of leak testing: units and gases',
  how: 'from memory',
  note: 'Throughput in pressure times volume per time; molecular flow goes with the root of the molar mass, viscous flow with the viscosity.',
});
