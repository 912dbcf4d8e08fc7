import { source } from './source.ts';

export const iec60079x0 = source({
  id: 'iec-60079-0',
  title: 'IEC 60079-0, explosive atmospheres, general requirements (edition not seen)',
  how: 'from memory',
  note: 'Protection levels by zone, groups, the usual ambient of −20 to 40 °C, how a marking is made up. Verify in a licensed copy.',
});
