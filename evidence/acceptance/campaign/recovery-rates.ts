import { chainedPoints } from '../../rehearsal/chains.ts';
import { covers, recoveredBy, ways } from '../recovery.ts';

/** How often what was put in lies inside the interval that is told of it. */
export interface RecoveryRates {
  /** Runs of each record, in the order of the seeds from 1. */
  ways: Record<string, number>;
  kinds: Record<string, { runs: number; told: number; inside: number }>;
}

export const noRecovery = (): RecoveryRates => ({ ways: {}, kinds: {} });

const place = chainedPoints().find(({ name }) => name === 'P-301/pump-drive-end-horizontal')!;

/** One run more of the record with the fewest; false where all have as many as were asked for. */
export function oneMoreRecovery(rates: RecoveryRates, runs: number): boolean {
  const made = (way: string) => rates.ways[way] ?? 0;
  const way = Object.keys(ways).reduce((least, each) => (made(each) < made(least) ? each : least));
  if (made(way) >= runs) return false;
  rates.ways[way] = made(way) + 1;
  for (const one of recoveredBy(way, place, made(way))) {
    rates.kinds[one.kind] ??= { runs: 0, told: 0, inside: 0 };
    const own = rates.kinds[one.kind]!;
    own.runs += 1;
    own.told += Number(one.found !== undefined);
    own.inside += Number(covers(one));
  }
  return true;
}
