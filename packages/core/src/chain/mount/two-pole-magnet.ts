import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { magnetMount } from './mount-kind.ts';

export const twoPoleMagnet = magnetMount({
  kind: 'two-pole-magnet',
  name: 'Two-pole magnet on a curved surface',
  cautions: [
    'It touches along two lines only: never for bearing envelopes.',
    'Remove the paint at the two lines of contact.',
  ],
  sources: [clause(tradePractice)],
});
