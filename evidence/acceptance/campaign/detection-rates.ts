import type { CheckResult } from '../../../packages/core/src/index.ts';
import { checked } from '../healthy.ts';
import type { InjectedFault, InjectedSize } from './injected-fault.ts';
import { placeCalled } from './places.ts';
import { piece } from './records.ts';
import { runningFaults } from './running-faults.ts';
import { standingFaults } from './standing-faults.ts';

export const injectedFaults: readonly InjectedFault[] = [...standingFaults, ...runningFaults];

/** What became of a fault of one size. */
export interface DetectedAt {
  fault: string;
  said: string;
  runs: number;
  /** The check that is to find it failed. */
  found: number;
  /** And named the right cause first. */
  first: number;
  /** And named it among its causes. */
  named: number;
  cannotTell: number;
  /** Another check failed as well. */
  beside: number;
}

export interface DetectionRates {
  rows: DetectedAt[];
}

export const noDetection = (): DetectionRates => ({ rows: [] });

const all = injectedFaults.flatMap((fault) => fault.sizes.map((size) => ({ fault, size })));

/** One run more of the fault and size with the fewest; false where all have as many as were asked for. */
export function oneMoreDetection(rates: DetectionRates, runs: number): boolean {
  const rowOf = ({ fault, size }: (typeof all)[number]) =>
    rates.rows.find((each) => each.fault === fault.fault && each.said === size.said);
  const next = all.reduce((least, each) => ((rowOf(each)?.runs ?? 0) < (rowOf(least)?.runs ?? 0) ? each : least));
  let row = rowOf(next);
  if (row === undefined) {
    const { fault, said } = { fault: next.fault.fault, said: next.size.said };
    row = { fault, said, runs: 0, found: 0, first: 0, named: 0, cannotTell: 0, beside: 0 };
    rates.rows.push(row);
  }
  if (row.runs >= runs) return false;
  const { found, first, named, cannotTell, beside } = injected(next.fault, next.size, row.runs);
  row.runs += 1;
  row.found += Number(found);
  row.first += Number(first);
  row.named += Number(named);
  row.cannotTell += Number(cannotTell);
  row.beside += Number(beside);
  return true;
}

/** A fault of a size put into the records of one piece. */
export function injected(fault: InjectedFault, { said, size }: InjectedSize, turn: number) {
  const place = placeCalled(fault.places[turn % fault.places.length]!);
  const at = all.findIndex((each) => each.fault === fault && each.size.said === said);
  const making = piece(place, 100_000 + 1000 * at + turn);
  const { records, beside } = fault.make(making, size);
  const results = checked(place, records, beside);
  const own = results.filter(
    (each) => each.check === fault.check && each.at === place.name && (fault.of === undefined || each.of === fault.of),
  );
  const failed = own.filter(({ verdict }) => verdict === 'fails');
  const says = (result: CheckResult, count: number) =>
    result.causes.slice(0, count).some(({ cause }) => fault.cause.test(wordsOf(cause)));
  return {
    found: failed.length > 0,
    first: failed.some((each) => says(each, 1)),
    named: failed.some((each) => says(each, Number.POSITIVE_INFINITY)),
    cannotTell: failed.length === 0 && (own.length === 0 || own.some(({ verdict }) => verdict === 'cannot tell')),
    beside: results.some((each) => each.verdict === 'fails' && each.check !== fault.check && each.at === place.name),
    results,
  };
}

function wordsOf(cause: CheckResult['causes'][number]['cause']): string {
  return typeof cause === 'string' ? cause : JSON.stringify(cause);
}
