import { source } from './source.ts';

export const api617 = source({
  id: 'api-617',
  title: 'API 617, Axial and centrifugal compressors and expander-compressors',
  how: 'from memory',
  note: 'Shop acceptance of relative shaft vibration, 25.4 µm or 25.4 µm times √(12 000/N), whichever is less; some remember 25 µm.',
});
