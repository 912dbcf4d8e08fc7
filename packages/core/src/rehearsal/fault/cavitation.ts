import { fromAll, thenAnswer } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { MotionPart } from '../part/part.ts';
import { passing } from './blade-pass.ts';
import { faultKind } from './fault-kind.ts';

/** Broadband noise that swells with each passing blade. */
export const cavitation = faultKind({
  kind: 'cavitation',
  name: 'Cavitation',
  at: ['impeller', 'hydraulic-turbine'],
  sized: 'rms of the noise, 1 to 20 kHz',
  example: '1 g rms',
  sources: [clause(tradePractice, 'cavitation: broadband, modulated by blade pass')],
  parts: ({ size }, place) =>
    thenAnswer(passing(place), (line) =>
      fromAll({ of: place.line(line) }, ({ of }): readonly MotionPart[] => [
        {
          is: 'noise',
          name: `${place.at}, cavitation`,
          level: size,
          band: { low: 1000, high: 20_000 },
          modulatedBy: [{ of, depth: 0.5 }],
          assumed: ['Equally strong from 1 to 20 kHz, and half as strong again as a blade passes.'],
        },
      ]),
    ),
});
