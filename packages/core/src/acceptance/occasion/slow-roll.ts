import { quantityField } from '../../quantity/index.ts';
import { occasionKind } from './occasion-kind.ts';

export const slowRolling = occasionKind({
  kind: 'slow-roll',
  name: 'Slow roll',
  how: 'Rotor warm and straight, turned slowly and steadily, once-per-turn signal recorded beside the probes.',
  dataSheet: {
    speed: quantityField('shaft speed', 'Speed at which it was rolled', { example: '300 r/min' }),
  },
  turning: true,
});
