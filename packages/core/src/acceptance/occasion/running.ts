import { optional, quantityField, textField } from '../../quantity/index.ts';
import { occasionKind } from './occasion-kind.ts';

export const running = occasionKind({
  kind: 'running',
  name: 'Machine running',
  how: 'Machine at a steady speed and load that are written down; longer than a few seconds.',
  dataSheet: {
    speed: optional(
      quantityField('shaft speed', 'Speed of the shaft the point speaks of, as read at the machine', {
        example: '1486 r/min',
      }),
    ),
    load: optional(textField('Load and process condition', { example: '85 % flow' })),
  },
  turning: true,
});
