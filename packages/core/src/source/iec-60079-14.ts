import { source } from './source.ts';

export const iec60079x14 = source({
  id: 'iec-60079-14',
  title: 'IEC 60079-14:2013, electrical installations: design, selection and erection',
  how: 'from memory',
  note: 'Entity comparison, the 1 % rule that halves Co and Lo, kinds of multicore cable. The comparison itself is known second-hand too. Verify in a licensed copy.',
});
