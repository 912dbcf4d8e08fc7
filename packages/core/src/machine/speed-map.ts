import { type Answer, answer } from '../quantity/index.ts';
import { type FrequencyLine, frequencyAt, frequencyBetween, frequencyLines } from './frequency-line.ts';
import { statesOverRange } from './frequency-table.ts';
import { solvedTrain } from './solved-train.ts';
import { operatingRange } from './state.ts';
import type { Train } from './train.ts';

/** One place on a line of the map: frequency in hertz over what the operation is stated in, with the band of slip. */
export interface MapPoint {
  readonly at: number;
  readonly frequency: number;
  readonly low: number;
  readonly high: number;
}

export interface MapLine {
  readonly line: FrequencyLine;
  readonly harmonic: number;
  readonly points: readonly MapPoint[];
}

/** The frequencies of a train over its operating range, ready to draw. */
export interface SpeedMap {
  readonly of: string;
  /** What runs along: speed of a shaft, or line frequency of a motor. */
  readonly along: { readonly by: 'shaft' | 'line'; readonly name: string; readonly low: number; readonly high: number };
  readonly lines: readonly MapLine[];
  /** Lines that cannot be drawn, because something is not known. */
  readonly left: readonly string[];
}

/** Order lines over the range: `harmonics` multiples of each line at most, at `steps` + 1 speeds. */
export function speedMap(train: Train, { harmonics = 1, steps = 24 } = {}): Answer<SpeedMap> {
  const solved = solvedTrain(train);
  const states = statesOverRange(solved, steps);
  const range = operatingRange(train);
  if (!states.known) return states;
  if (!range.known) return range;
  const { operation } = train;
  const lines: MapLine[] = [];
  const left: string[] = [];
  for (const line of frequencyLines(solved)) {
    const points = states.value.flatMap((state): readonly MapPoint[] => {
      const frequency = frequencyAt(line, state);
      const between = frequencyBetween(line, state);
      if (!frequency.known || !state.at.known || between === undefined) return [];
      return [{ at: state.at.value, frequency: frequency.value, ...between }];
    });
    if (points.length < states.value.length) {
      left.push(line.name);
      continue;
    }
    for (let harmonic = 1; harmonic <= Math.min(harmonics, line.harmonics); harmonic++) {
      lines.push({ line, harmonic, points: points.map((point) => multiplied(point, harmonic)) });
    }
  }
  const name = operation.by === 'shaft' ? operation.shaft : operation.motor;
  const { low, high } = range.value;
  return answer({ of: train.of, along: { by: operation.by, name, low, high }, lines, left });
}

function multiplied({ at, frequency, low, high }: MapPoint, harmonic: number): MapPoint {
  return { at, frequency: frequency * harmonic, low: low * harmonic, high: high * harmonic };
}
