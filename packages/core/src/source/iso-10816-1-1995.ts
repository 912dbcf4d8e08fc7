import { source } from './source.ts';

export const iso10816x1edition1995 = source({
  id: 'iso-10816-1-1995',
  title: 'ISO 10816-1:1995, General guidelines',
  how: 'from memory',
  note: 'Classes I to IV.',
});
