import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import type { Running, SetKind } from './set-kind.ts';
import { envelopeSpectrum } from './sets/envelope-spectrum.ts';
import { lowRange } from './sets/low-range.ts';
import { steadyShaft } from './sets/steady-shaft.ts';
import { synchronous } from './sets/synchronous.ts';
import { velocitySpectrum } from './sets/velocity-spectrum.ts';
import { type SpectrumSet, spectrumSet } from './spectrum-set.ts';

/** Every kind of record. */
export const setKinds: readonly SetKind[] = [velocitySpectrum, lowRange, envelopeSpectrum, steadyShaft, synchronous];

/** The settings a point needs, and what could not be required because it is not known. */
export interface PointSettings {
  readonly sets: readonly SpectrumSet[];
  readonly unknown: readonly string[];
}

/** A point whose chain sends one number has nothing to set here. */
export function settingsFor(point: MeasuringPoint, table: FrequencyTable, running: Running = {}): PointSettings {
  const needs = setKinds.flatMap((each) => each.needs(point, table, running) ?? []);
  const unknown = needs.flatMap((each) => each.unknown);
  // A set whose reach is not known at all would be a guess.
  const sets = needs.flatMap((each) => {
    if ('set' in each) return [each.set];
    return each.need.reach.length > 0 ? [spectrumSet(each.need)] : [];
  });
  return { sets, unknown: [...new Set(unknown)] };
}
