import { type Answer, answer } from '../quantity/index.ts';
import { type Along, regions, zeros } from './along-range.ts';
import { type FrequencyLine, frequencyAt, frequencyBetween, frequencyLines, standsStill } from './frequency-line.ts';
import { statesOverRange } from './frequency-table.ts';
import { type SolvedTrain, solvedTrain } from './solved-train.ts';
import { operatingRange, stateAt } from './state.ts';
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

type Range = { readonly low: number; readonly high: number };

/** An order, or a multiple of it, beside something that stands still: a mode, a critical speed, the mains, a carrier. */
export interface MapMeeting {
  readonly order: FrequencyLine;
  readonly harmonic: number;
  readonly standing: FrequencyLine;
  /** Where the standing one lies, in hertz. */
  readonly band: Range;
  /** Speeds or line frequencies between which the order lies in that band; none where it never does in the range. */
  readonly inside: readonly Range[];
  /** Where it comes nearest, and how far it stays from the band there, relative to the edge; 0 inside. */
  readonly nearest: { readonly at: number; readonly relative: number; readonly frequency: number };
}

/** The frequencies of a train over its operating range, ready to draw. */
export interface SpeedMap {
  readonly of: string;
  /** What runs along: speed of a shaft, or line frequency of a motor. */
  readonly along: { readonly by: 'shaft' | 'line'; readonly name: string; readonly low: number; readonly high: number };
  readonly lines: readonly MapLine[];
  /** Where orders meet what stands still, nearest first. */
  readonly meetings: readonly MapMeeting[];
  /** Lines that cannot be drawn, because something is not known. */
  readonly left: readonly string[];
}

/** An order nearer than this to something that stands still is reported. ISO 20816-1 asks 25 % of a support, from memory. */
export const usualDistance = 0.25;

/** Order lines over the range: `harmonics` multiples of each line at most, at `steps` + 1 speeds. */
export function speedMap(train: Train, { harmonics = 1, steps = 24, distance = usualDistance } = {}): Answer<SpeedMap> {
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
  const along = { by: operation.by, name, low, high };
  return answer({ of: train.of, along, lines, meetings: meetings(solved, lines, distance), left });
}

function multiplied({ at, frequency, low, high }: MapPoint, harmonic: number): MapPoint {
  return { at, frequency: frequency * harmonic, low: low * harmonic, high: high * harmonic };
}

/** Every order that enters the band of something standing, or comes within `distance` of it. */
function meetings(solved: SolvedTrain, lines: readonly MapLine[], distance: number): readonly MapMeeting[] {
  const standing = lines.filter(({ line, harmonic }) => harmonic === 1 && standsStill(line));
  const orders = lines.filter(({ line }) => !standsStill(line));
  return standing
    .flatMap((still) => orders.map((order) => meeting(solved, order, still)))
    .filter(({ nearest }) => nearest.relative <= distance)
    .sort((a, b) => a.nearest.relative - b.nearest.relative);
}

function meeting(solved: SolvedTrain, order: MapLine, still: MapLine): MapMeeting {
  const { low, high, frequency: middle } = still.points[0]!;
  const frequency = (at: number) => {
    const found = frequencyAt(order.line, stateAt(solved, answer(at)));
    return found.known ? found.value * order.harmonic : Number.POSITIVE_INFINITY;
  };
  const along = (value: (frequency: number) => number): Along => ({
    steps: order.points.map((point) => ({ at: point.at, value: value(point.frequency) })),
    value: (at) => value(frequency(at)),
  });
  const crossings = zeros(along((each) => each - middle));
  const width = (each: number) => Math.abs(each - middle) - (each < middle ? middle - low : high - middle);
  // A band of no width is met at points; halving towards its edges would follow the last digit.
  const inside = high > low ? regions(along(width), crossings) : crossings.map((at) => ({ low: at, high: at }));
  const away = (each: number) => (each < low ? 1 - each / low : each > high ? each / high - 1 : 0);
  const atCrossing = (at: number) => ({ at, relative: 0, frequency: frequency(at) });
  const nearest = order.points.reduce((best, each) => (away(each.frequency) < away(best.frequency) ? each : best));
  return {
    order: order.line,
    harmonic: order.harmonic,
    standing: still.line,
    band: { low, high },
    inside,
    nearest:
      inside.length > 0
        ? atCrossing(crossings[0] ?? inside[0]!.low)
        : { at: nearest.at, relative: away(nearest.frequency), frequency: nearest.frequency },
  };
}
