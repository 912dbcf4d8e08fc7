import { broch1984 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { magnetMount } from './mount-kind.ts';

export const flatMagnet = magnetMount({
  kind: 'flat-magnet',
  name: 'Flat magnet on a machined spot or target disc',
  cautions: [
    'Paint, rust or a curved surface under the magnet makes it rock.',
    "It pulls hard and snaps on: lower it on its edge, a shock may exceed the transducer's limit.",
  ],
  sources: [clause(broch1984)],
});
