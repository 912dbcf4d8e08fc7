import { showMeasure } from '../../../packages/core/src/index.ts';
import { healthySession, placeOf } from './healthy-session.ts';
import { campaignPlaces } from './places.ts';

export interface VerdictCounts {
  meets: number;
  fails: number;
  'cannot tell': number;
}

/** What a thousand healthy acceptances said. */
export interface HealthyRates {
  rehearsals: number;
  /** Rehearsals in which at least one check called a fault. */
  withFault: number;
  places: Record<string, { rehearsals: number; withFault: number }>;
  checks: Record<string, VerdictCounts>;
  /** Each false fault, so that it can be made again. */
  faults: { place: string; seed: number; check: string; said: string }[];
}

export const noHealthy = (): HealthyRates => ({ rehearsals: 0, withFault: 0, places: {}, checks: {}, faults: [] });

/** One more healthy acceptance, of the seed that comes next. */
export function oneMoreHealthy(rates: HealthyRates): void {
  const seed = rates.rehearsals + 1;
  const place = placeOf(campaignPlaces(), seed);
  const results = healthySession(place, seed);
  rates.places[place.name] ??= { rehearsals: 0, withFault: 0 };
  const own = rates.places[place.name]!;
  const fails = results.filter(({ verdict }) => verdict === 'fails');
  rates.rehearsals += 1;
  own.rehearsals += 1;
  if (fails.length > 0) {
    rates.withFault += 1;
    own.withFault += 1;
  }
  for (const { check, verdict } of results) {
    rates.checks[check] ??= { meets: 0, fails: 0, 'cannot tell': 0 };
    rates.checks[check]![verdict] += 1;
  }
  for (const { check, of, expected, found } of fails) {
    const said = `${of === undefined ? '' : `${of}: `}${showMeasure(expected)} was expected, ${showMeasure(found)} found`;
    rates.faults.push({ place: place.name, seed, check, said });
  }
}
