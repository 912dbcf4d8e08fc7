import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { bareNumber, measured, said } from '../finding/measure.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { heard, type Running, type SetKind } from './set-kind.ts';
import { crankWaveform } from './sets/crank-waveform.ts';
import { envelopeSpectrum } from './sets/envelope-spectrum.ts';
import { lowModes } from './sets/low-modes.ts';
import { lowRange } from './sets/low-range.ts';
import { meshSpectrum } from './sets/mesh-spectrum.ts';
import { motionPath } from './sets/motion-path.ts';
import { planetaryMesh } from './sets/planetary-mesh.ts';
import { planetaryTurns } from './sets/planetary-turns.ts';
import { steadyShaft } from './sets/steady-shaft.ts';
import { synchronous } from './sets/synchronous.ts';
import { velocitySpectrum } from './sets/velocity-spectrum.ts';
import { type SpectrumSet, smear, spectrumSet } from './spectrum-set.ts';

/** Every kind of record. */
export const setKinds: readonly SetKind[] = [
  velocitySpectrum,
  lowRange,
  envelopeSpectrum,
  meshSpectrum,
  steadyShaft,
  synchronous,
  planetaryMesh,
  planetaryTurns,
  motionPath,
  lowModes,
  crankWaveform,
];

/** The settings a point needs, and what could not be required because it is not known. */
export interface PointSettings {
  readonly sets: readonly SpectrumSet[];
  readonly unknown: readonly string[];
}

/** A point whose chain sends one number has nothing to set here. */
export function settingsFor(point: MeasuringPoint, table: FrequencyTable, running: Running = {}): PointSettings {
  const listened = heard(table, point);
  const needs = setKinds.flatMap((each) => each.needs(point, listened, running) ?? []);
  const unknown = needs.flatMap((each) => each.unknown);
  // A set whose reach is not known at all would be a guess.
  const sets = needs.flatMap((each) => {
    if ('set' in each) return [each.set];
    return each.need.reach.length > 0 ? [spectrumSet(each.need)] : [];
  });
  return { sets: sets.map((each) => smeared(each, running)), unknown: [...new Set(unknown)] };
}

/** What a speed that strays does to the farthest line of a record by the clock. One counted in turns does not smear. */
function smeared(set: SpectrumSet, { wander }: Running): SpectrumSet {
  if (wander?.known !== true || set.reach === undefined || set.orders !== undefined) return set;
  const spread = smear(set.reach.value, wander.value, set.resolution);
  if (spread.lines <= 1) return { ...set, smear: spread };
  const strays = said`the speed strays: ${measured('frequency', set.reach.value)} spreads over ${measured('frequency', spread.hertz)}, ${bareNumber(spread.lines, 3)} lines; only a record counted in turns tells such lines apart`;
  return { ...set, smear: spread, reasons: [...set.reasons, strays] };
}
