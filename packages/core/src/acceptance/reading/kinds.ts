import { kinds } from '../../quantity/kinds.ts';
import { loopSteps } from './loop-steps.ts';
import { probeCurve } from './probe-curve.ts';
import type { ReadingOf } from './reading-kind.ts';

/** Every table that is read off by hand. */
export const readingKinds = kinds(probeCurve, loopSteps);

export type ReadingName = (typeof readingKinds)[number]['kind'];
export type ReadingTable = {
  [K in (typeof readingKinds)[number] as K['kind']]: ReadingOf<K>;
}[ReadingName];
