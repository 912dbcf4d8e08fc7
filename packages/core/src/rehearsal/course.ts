import { type FrequencyLine, frequencyAt, onceAround, standsStill } from '../machine/frequency-line.ts';
import type { FrequencyTable } from '../machine/frequency-table.ts';
import { type SolvedTrain, solvedTrain } from '../machine/solved-train.ts';
import { operatingRange, stateAt } from '../machine/state.ts';
import type { Train } from '../machine/train.ts';
import { type Answer, answer, fromAll, thenAnswer, unanswered } from '../quantity/index.ts';
import type { SpeedCourse, SpeedStatement } from './script.ts';

/** So many times a line of the machine, or so many hertz whatever turns. */
export type CourseTerm = { readonly line: FrequencyLine; readonly times: number } | { readonly hertz: number };

/** A frequency along the record: how many cycles have passed at a sample, and the frequency there. */
export interface FrequencyCourse {
  cycles(index: number): number;
  frequency(index: number): number;
}

/** How the train turns along a record: every line of it can be followed. */
export interface TurningCourse {
  readonly samples: number;
  readonly rate: number;
  /** The shaft all speeds are counted in. */
  readonly reference: string;
  /** Whether nothing turns. */
  readonly stands: boolean;
  /** The sum of some terms, as |Σ|. */
  follow(terms: readonly CourseTerm[]): Answer<FrequencyCourse>;
  /** Of the reference shaft. */
  readonly turns: FrequencyCourse;
}

/** Speeds between which the frequencies of a course that changes are told; a straight line lies between two of them. */
const stations = 64;

/** The course of a train over so many samples; unknown where a speed of the script is not one the train can tell. */
export function turningCourse(
  train: Train,
  table: FrequencyTable,
  course: SpeedCourse,
  length: { readonly samples: number; readonly rate: number; readonly from: number },
): Answer<TurningCourse> {
  const solved = solvedTrain(train);
  const { reference } = table;
  if (course.is === 'standstill') return answer(standing(length, reference));
  const ends = course.is === 'steady' ? { from: course.at, to: course.at } : { from: course.from, to: course.to };
  const wander = course.is === 'steady' ? (course.wander ?? 0) : 0;
  return thenAnswer(
    fromAll(
      { from: operatingValue(solved, table, ends.from), to: operatingValue(solved, table, ends.to) },
      (known) => known,
    ),
    ({ from, to }) => {
      const share = shareAlong(course, length);
      const low = from * (1 - wander / 2);
      const high = wander > 0 ? from * (1 + wander / 2) : to;
      const follow = (terms: readonly CourseTerm[]) => followed(solved, terms, low, high, share, length.rate);
      return fromAll({ turns: follow([{ line: onceAround(solved, reference), times: 1 }]) }, ({ turns }) => ({
        samples: length.samples,
        rate: length.rate,
        reference,
        stands: false,
        follow,
        turns,
      }));
    },
  );
}

/** Where a sample lies between the first and the last speed, 0 to 1; nothing of a course at one speed. */
function shareAlong(
  course: SpeedCourse,
  { samples, rate, from }: { readonly samples: number; readonly rate: number; readonly from: number },
): Float64Array | undefined {
  if (course.is === 'standstill' || (course.is === 'steady' && !((course.wander ?? 0) > 0))) return undefined;
  // Before the record the machine holds its first speed.
  const along = (index: number) => Math.max(0, index - from) / Math.max(1, samples - 1 - from);
  if (course.is === 'steady') {
    return Float64Array.from({ length: samples }, (_, index) => {
      const seconds = index / rate;
      // Two slow sines without a common period: a governor hunts, it does not jump. Common practice, no source.
      return 0.5 + 0.3 * Math.sin(2 * Math.PI * 0.31 * seconds) + 0.2 * Math.sin(2 * Math.PI * 0.83 * seconds + 1);
    });
  }
  const shape = course.is === 'ramp' ? (x: number) => x : (x: number) => (1 - Math.exp(-3 * x)) / (1 - Math.exp(-3));
  return Float64Array.from({ length: samples }, (_, index) => shape(along(index)));
}

function followed(
  solved: SolvedTrain,
  terms: readonly CourseTerm[],
  low: number,
  high: number,
  share: Float64Array | undefined,
  rate: number,
): Answer<FrequencyCourse> {
  const count = share === undefined ? 0 : stations;
  const told: Answer<Float64Array> = sumOver(
    solved,
    terms,
    Array.from({ length: count + 1 }, (_, k) => (count === 0 ? low : low + ((high - low) * k) / count)),
  );
  return fromAll({ told }, ({ told: hertz }) => {
    if (share === undefined) {
      const frequency = hertz[0]!;
      return { cycles: (index) => (frequency * index) / rate, frequency: () => frequency };
    }
    const at = (index: number) => {
      const place = share[index]! * count;
      const k = Math.min(count - 1, Math.floor(place));
      return hertz[k]! + (hertz[k + 1]! - hertz[k]!) * (place - k);
    };
    const cycles = new Float64Array(share.length);
    let before = at(0);
    for (let index = 1; index < cycles.length; index++) {
      const now = at(index);
      cycles[index] = cycles[index - 1]! + (before + now) / 2 / rate;
      before = now;
    }
    return { cycles: (index) => cycles[index]!, frequency: at };
  });
}

function sumOver(solved: SolvedTrain, terms: readonly CourseTerm[], values: readonly number[]): Answer<Float64Array> {
  const sums = values.map((value) => {
    const state = stateAt(solved, answer(value));
    const parts = terms.map(
      (term): Answer<number> =>
        'hertz' in term
          ? answer(term.hertz)
          : fromAll({ base: frequencyAt(term.line, state) }, ({ base }) => base * term.times),
    );
    return fromAll(Object.fromEntries(parts.entries()), (known) =>
      Math.abs(Object.values(known).reduce((sum, each) => sum + each, 0)),
    );
  });
  return fromAll(Object.fromEntries(sums.entries()), (known) => Float64Array.from(values, (_, index) => known[index]!));
}

/** What the course of the train is set by, reference speed or line frequency, at a speed that somebody stated. */
function operatingValue(solved: SolvedTrain, table: FrequencyTable, stated: SpeedStatement): Answer<number> {
  if (typeof stated === 'string') {
    const state = table.states.find((each) => each.name === stated);
    return state?.at ?? unanswered([{ of: table.of, what: `operating state '${stated}'` }]);
  }
  if (solved.train.operation.by === 'shaft') return answer(stated);
  return thenAnswer(operatingRange(solved.train), ({ high }) => {
    const speed = (at: number) => frequencyAt(onceAround(solved, table.reference), stateAt(solved, answer(at)));
    // A motor turns the faster the higher its line frequency, so halving finds the one that gives the speed.
    let [below, above] = [0, 2 * high];
    for (let step = 0; step < 60; step++) {
      const middle = (below + above) / 2;
      const found = speed(middle);
      if (found.known && found.value > stated) above = middle;
      else below = middle;
    }
    const reached = speed(above);
    return reached.known && Math.abs(reached.value - stated) < 1e-6 * stated
      ? answer(above)
      : unanswered([{ of: table.of, what: `line frequency for ${stated} turns a second` }]);
  });
}

const atRest: FrequencyCourse = { cycles: () => 0, frequency: () => 0 };

/** Nothing turns; what stands still whatever turns, a mode, has its frequency all the same. */
function standing(
  { samples, rate }: { readonly samples: number; readonly rate: number },
  reference: string,
): TurningCourse {
  return {
    samples,
    rate,
    reference,
    stands: true,
    turns: atRest,
    follow: (terms) => {
      const hertz = terms.reduce((sum, term) => sum + ('hertz' in term ? term.hertz : 0), 0);
      return answer(hertz === 0 ? atRest : { cycles: (index) => (hertz * index) / rate, frequency: () => hertz });
    },
  };
}

/** Whether a term keeps its frequency at every speed. */
export function keepsStill(term: CourseTerm): boolean {
  return 'hertz' in term || standsStill(term.line);
}
