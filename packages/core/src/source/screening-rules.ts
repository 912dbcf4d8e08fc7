import { source } from './source.ts';

export const screeningRules = source({
  id: 'screening-rules',
  title: 'Screening rules of the six invented reference plants',
  how: 'computed here',
  note: '10 dB over the floor to detect, 3 dB of headroom, worst case in phase; re-derived by their author in a second way.',
});
