import { template } from '../template.ts';

/** Template 27: microphone with built-in preamplifier. Where its fields stand is not known here. */
export const microphone = template({
  kind: 'template-27',
  id: 27,
  name: 'Microphone with built-in preamplifier',
  sections: [],
  edges: [],
  notKnown: ['sensitivity', 'corner frequencies', 'reference condition', 'calibration date, initials and period'],
});
