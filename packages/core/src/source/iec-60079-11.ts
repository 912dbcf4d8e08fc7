import { source } from './source.ts';

export const iec60079x11 = source({
  id: 'iec-60079-11',
  title: 'IEC 60079-11, equipment protection by intrinsic safety (edition not seen)',
  how: 'from memory',
  note: 'Levels ia, ib, ic; simple apparatus; temperature class of small parts by their power; which gas group stands for dust. Verify in a licensed copy.',
});
