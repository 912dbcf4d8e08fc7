import { type Answer, fromAll } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';

/** What drives a cable, and what must be driven. */
export interface CableDrive {
  readonly current: number;
  readonly capacitance: number;
}

/** Supply current less what the electronics keep, on the capacitance of the whole cable. */
export function cableDrive(chain: MeasuringChain): Answer<CableDrive> | undefined {
  const { biased } = chain.transducer;
  const { constantCurrent } = chain.input;
  if (biased === undefined || constantCurrent === undefined) return undefined;
  return fromAll(
    { own: biased.ownCurrent, fed: constantCurrent.current, capacitance: chain.cable.capacitance },
    ({ own, fed, capacitance }) => ({ current: fed - own, capacitance }),
  );
}
