import { type FrequencyLine, frequencyAt, frequencyBetween, frequencyLines } from './frequency-line.ts';
import { solvedTrain } from './solved-train.ts';
import type { OperatingState } from './state.ts';
import type { Train } from './train.ts';

/** A line, or a multiple of it, that may be what was seen. */
export interface Candidate {
  readonly line: FrequencyLine;
  readonly harmonic: number;
  /** Kinematic frequency in hertz. */
  readonly expected: number;
  /** Seen less expected, in hertz and relative. */
  readonly difference: number;
  readonly relative: number;
  /** Whether it is met within the tolerance, or only within what slip or an estimate leaves open. */
  readonly within: 'tolerance' | 'slip';
}

export interface WhatRuns {
  readonly candidates: readonly Candidate[];
  /** Lines that could not be held against it, because something is not known. */
  readonly notCompared: readonly string[];
}

/** Matching window where nobody asked for another, relative. Common practice for gears and shafts, no source. */
export const usualWindow = 0.005;

/**
 * Which lines of a train lie at a frequency seen in a state, nearest first. `resolution` widens the window by the line
 * spacing of the spectrum it was seen in; `harmonics` raises the multiples looked at.
 */
export function whatRunsAt(
  train: Train,
  frequency: number,
  state: OperatingState,
  options: { readonly tolerance?: number; readonly resolution?: number; readonly harmonics?: number } = {},
): WhatRuns {
  const { tolerance = usualWindow, resolution = 0 } = options;
  const candidates: Candidate[] = [];
  const notCompared: string[] = [];
  for (const line of frequencyLines(solvedTrain(train))) {
    const base = frequencyAt(line, state);
    if (!base.known) {
      notCompared.push(line.name);
      continue;
    }
    if (!(base.value > 0)) continue;
    const between = frequencyBetween(line, state) ?? { low: base.value, high: base.value };
    for (let harmonic = 1; harmonic <= Math.max(line.harmonics, options.harmonics ?? 1); harmonic++) {
      const expected = harmonic * base.value;
      const difference = frequency - expected;
      const room = tolerance * expected + resolution;
      const near = Math.abs(difference) <= room;
      const slipping =
        frequency >= harmonic * between.low - resolution && frequency <= harmonic * between.high + resolution;
      if (!near && !slipping) continue;
      candidates.push({
        line,
        harmonic,
        expected,
        difference,
        relative: difference / expected,
        within: near ? 'tolerance' : 'slip',
      });
    }
  }
  const nearestFirst = candidates.sort(
    (a, b) => Math.abs(a.relative) - Math.abs(b.relative) || a.harmonic - b.harmonic,
  );
  return { candidates: withoutRepeats(nearestFirst), notCompared };
}

/** 2x is also the second multiple of 1x: of what one element makes at one frequency, the lowest multiple stays. */
function withoutRepeats(sorted: readonly Candidate[]): readonly Candidate[] {
  return sorted.filter(
    (each, index) =>
      !sorted.some(
        (other, place) =>
          place !== index &&
          other.line.element === each.line.element &&
          other.line.madeBy === each.line.madeBy &&
          Math.abs(other.expected - each.expected) <= 1e-9 * each.expected &&
          (other.harmonic < each.harmonic || (other.harmonic === each.harmonic && place < index)),
      ),
  );
}
