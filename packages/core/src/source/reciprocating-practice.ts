import { source } from './source.ts';

export const reciprocatingPractice = source({
  id: 'reciprocating-practice',
  title: 'Orders of reciprocating machines: inertia of a slider crank, reversals of rod load, gas pulses',
  how: 'from memory',
  note: 'Primary inertia r·ω², secondary r/l of it at twice the speed; checked here against the exact motion of a slider crank.',
});
