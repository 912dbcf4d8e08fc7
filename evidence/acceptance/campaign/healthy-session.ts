import type { BesideRecords, CheckResult, MeasuredRecord } from '../../../packages/core/src/index.ts';
import type { ChainedPoint } from '../../rehearsal/chains.ts';
import { checked } from '../healthy.ts';
import {
  atRest,
  besideReference,
  calibrated,
  curve,
  loopRunning,
  type Making,
  pairRunning,
  piece,
  poweredOn,
  predictionAt,
  rolled,
  run,
  steps,
  stopped,
  tapped,
} from './records.ts';

/** Everything an acceptance of one healthy chain holds, made of one seed. */
export function healthySession(place: ChainedPoint, seed: number): readonly CheckResult[] {
  const { records, beside } = recordsOf(piece(place, seed));
  return checked(place, records, beside);
}

function recordsOf(making: Making): { readonly records: readonly MeasuredRecord[]; readonly beside: BesideRecords } {
  const { chain } = predictionAt(making.place);
  if (chain.transducer.oneNumber !== undefined) {
    return { records: [loopRunning(making)], beside: { readings: [steps(making)] } };
  }
  if (chain.transducer.reference !== 'casing') return ofProbes(making);
  // Taps and a reference in one of four each: both are costly, and no other record depends on them.
  const turn = Math.floor(making.random.uniform() * 4);
  const taps = turn === 0;
  const reference = turn === 1 ? besideReference(making) : undefined;
  const biased = chain.transducer.biased !== undefined;
  return {
    records: [
      ...(biased ? [atRest(making), poweredOn(making)] : []),
      stopped(making),
      ...(taps ? [tapped(making)] : []),
      calibrated(making),
      ...(reference === undefined ? [] : [reference.record]),
      run(making),
    ],
    beside: { serving: reference === undefined ? [] : [reference.serving] },
  };
}

function ofProbes(making: Making) {
  const { random } = making;
  const set = 0.25 * (2 * random.uniform() - 1);
  const gap = (volts: Float64Array) => volts.map((each) => each + set);
  const [x, y] = pairRunning(making);
  return {
    records: [
      atRest(making, { channel: 'X', volts: gap }),
      stopped(making, { channel: 'X' }),
      rolled(making, 5e-6 * random.uniform()),
      x,
      y,
    ],
    beside: { readings: [curve(making)] },
  };
}

/** The healthy chains by turns. */
export function placeOf(places: readonly ChainedPoint[], seed: number): ChainedPoint {
  return places[seed % places.length]!;
}
