import { source } from './source.ts';

export const iec60079x25 = source({
  id: 'iec-60079-25',
  title: 'IEC 60079-25, intrinsically safe electrical systems (edition not seen)',
  how: 'second-hand',
  note: 'Cable values where none are declared: 200 pF/m, 1 µH/m or 30 µH/Ω.',
});
