import { source } from './source.ts';

export const barrierPractice = source({
  id: 'barrier-practice',
  title: 'Barriers and galvanic isolators in measuring lines, trade practice',
  how: 'common practice, no source',
  note: 'End-to-end resistance, working voltage and leakage of shunt-diode barriers, their earth below 1 ohm; isolators that feed the field out of their own source.',
});
