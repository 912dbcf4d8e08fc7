import { iso5348 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { elasticMount } from './mount-kind.ts';

export const adhesivePad = elasticMount({
  kind: 'adhesive-pad',
  name: 'Adhesive mounting pad',
  cautions: [
    'The adhesive ages and softens: below its rated temperature, on bare, degreased metal.',
    'A thick glue line is a spring: press it out thin.',
  ],
  sources: [clause(iso5348)],
});
