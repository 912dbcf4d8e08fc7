import { source } from './source.ts';

export const loopPractice = source({
  id: 'loop-practice',
  title: 'Two-wire 4-20 mA loops, instrumentation tutorials',
  how: 'second-hand',
  note: 'Scaling, and the load line from supply and device minimum voltage.',
});
