import { type Said, said } from '../../finding/measure.ts';
import { recognised } from '../human-errors.ts';
import type { RivalCause } from './check-kind.ts';

/** What a wrong ratio of found over expected may come from: the human errors within its reach, then what else there is. */
export function causesOfRatio(ratio: number, spread: number, others: readonly RivalCause[]): readonly RivalCause[] {
  const evidence = said`found over expected is ${ratio.toPrecision(3)}`;
  const human = recognised(ratio, spread).candidates.map(({ written, mistake }) => ({
    cause: mistake as Said,
    evidence: said`${evidence}, within ${(100 * spread).toPrecision(2)} % of ${written}`,
    next: 'Read unit, detector, sensitivity and gain of this channel at the recorder.',
  }));
  return [...human, ...others];
}
