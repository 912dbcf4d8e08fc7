import { type Answer, fromAll } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';
import { lineCapacitance } from './line.ts';

/** What drives a cable, and what must be driven. */
export interface CableDrive {
  readonly current: number;
  readonly capacitance: number;
}

/**
 * Supply current less what the electronics keep, or what a driver of its own gives, on the capacitance of every cable up
 * to what feeds it.
 */
export function cableDrive(chain: MeasuringChain): Answer<CableDrive> | undefined {
  const { biased, outputCurrent } = chain.transducer;
  if (outputCurrent !== undefined) {
    return fromAll({ current: outputCurrent, capacitance: lineCapacitance(chain.line) }, (known) => known);
  }
  const { fedBy } = chain;
  if (biased === undefined || fedBy === undefined) return undefined;
  return fromAll(
    { own: biased.ownCurrent, fed: fedBy.current, capacitance: lineCapacitance(chain.line) },
    ({ own, fed, capacitance }) => ({ current: fed - own, capacitance }),
  );
}
