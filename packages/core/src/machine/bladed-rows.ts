import { greatestCommonDivisor } from '../quantity/index.ts';

/** Running and standing blades or vanes that pass each other. */
export interface BladedRows {
  readonly running: number;
  readonly standing: number;
}

/** The lowest order at which both rows repeat together: the least common multiple. */
export function commonOrder({ running, standing }: BladedRows): number {
  return (running / Number(greatestCommonDivisor(BigInt(running), BigInt(standing)))) * standing;
}

/** A pressure field between the rows: `m` times the blade pass for who stands, `n` times the vane pass for who turns. */
export interface RowMeeting {
  readonly m: number;
  readonly n: number;
  /** |n·standing − m·running|: node diameters; 0 shakes the whole shaft line or pipe at once. */
  readonly nodeDiameters: number;
}

/**
 * Of the first `harmonics` multiples of both rows, the pressure fields with the fewest node diameters, fewest first:
 * they reach farthest. Source: rotor-stator interaction (from memory).
 */
export function rowMeetings({ running, standing }: BladedRows, harmonics = 4): readonly RowMeeting[] {
  const meetings: RowMeeting[] = [];
  for (let m = 1; m <= harmonics; m++) {
    for (let n = 1; n <= harmonics; n++) {
      meetings.push({ m, n, nodeDiameters: Math.abs(n * standing - m * running) });
    }
  }
  return meetings.sort((a, b) => a.nodeDiameters - b.nodeDiameters || a.m - b.m || a.n - b.n);
}
