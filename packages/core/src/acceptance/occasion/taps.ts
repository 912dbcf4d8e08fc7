import { choiceField, countField, optional, textField } from '../../quantity/index.ts';
import { occasionKind } from './occasion-kind.ts';

/** Which way a tap pushes the measured surface, seen from the transducer's positive direction. */
export const pushes = ['with the positive direction', 'against the positive direction'] as const;

export const taps = occasionKind({
  kind: 'taps',
  name: 'Tap test',
  how: 'Machine stopped; about five taps beside the transducer with a small hard tip, a second apart, side written down.',
  dataSheet: {
    push: choiceField(pushes, 'Which way the taps push the surface'),
    taps: optional(countField('Taps that were given', { example: '5' })),
    at: optional(textField('Measuring point beside which it was tapped; left out: this one')),
  },
  turning: false,
});
