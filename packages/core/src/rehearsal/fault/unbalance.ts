import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { faultKind } from './fault-kind.ts';

/** Once per turn, growing with the square of the speed as its force does. */
export const unbalance = faultKind({
  kind: 'unbalance',
  name: 'Unbalance',
  at: 'shaft',
  sized: 'once per turn at the highest speed of the record',
  example: '4 mm/s rms',
  sources: [clause(tradePractice, 'unbalance, once per turn')],
  parts: ({ size, phase }, place) =>
    fromAll({ of: place.line('1x') }, ({ of }) => [
      {
        is: 'tone',
        name: `${place.at}/1x`,
        of,
        level: size,
        grows: 2,
        ...(phase === undefined ? {} : { phase }),
        assumed: ['The support is the same at every speed: the motion grows as the force does.'],
      },
    ]),
});
