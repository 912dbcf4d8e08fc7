import { source } from './source.ts';

export const singleDegreeOfFreedom = source({
  id: 'single-degree-of-freedom',
  title: 'The single-degree-of-freedom resonator, any vibration textbook',
  how: 'from memory',
  note: 'Response 1/(1 - r2 + i r/Q); usable-frequency ratios 0.218 (5 %), 0.302 (10 %), 0.541 (3 dB).',
});
