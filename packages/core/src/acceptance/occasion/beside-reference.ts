import { optional, quantityField, textField } from '../../quantity/index.ts';
import { occasionKind } from './occasion-kind.ts';

export const besideReference = occasionKind({
  kind: 'beside-reference',
  name: 'Beside a reference transducer',
  how: 'A reference transducer of known sensitivity stands back to back or right beside, recorded at the same time.',
  dataSheet: {
    reference: textField('The channel of the same recording that is the reference'),
    uncertainty: optional(
      quantityField('fraction', 'Expanded uncertainty of the reference, k = 2', { example: '3 %' }),
    ),
  },
  turning: true,
});
