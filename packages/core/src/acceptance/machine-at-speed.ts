import type { DesignedMachine, DesignedPoint } from '../design/design.ts';
import { type Bounded, bounded } from '../machine/element.ts';
import { type FrequencyLine, frequencyAt, frequencyBetween, standsStill } from '../machine/frequency-line.ts';
import { solvedTrain } from '../machine/solved-train.ts';
import { type OperatingState, operatingRange, stateAt } from '../machine/state.ts';
import { type Answer, answer, thenAnswer, unanswered } from '../quantity/index.ts';

/** A line of the machine at the speed that was recorded. */
export interface MachineLine {
  readonly line: FrequencyLine;
  /** `outer-ring`, `1x`: what it is called at its element. */
  readonly called: string;
  readonly frequency: number;
  /** Where it may lie with slip, in hertz. */
  readonly low: number;
  readonly high: number;
  readonly still: boolean;
}

/** The shaft a point speaks of. */
export function shaftOf({ stated }: DesignedPoint, machine: DesignedMachine): string {
  return stated.shaft ?? machine.frequencies.reference;
}

/**
 * Every known line of a machine while the shaft of a point turns at a speed in hertz. On the mains the speed tells the
 * slip; elsewhere it tells reference speed or line frequency. Lines that are not known are left out.
 */
export function linesAtSpeed(
  designed: DesignedPoint,
  machine: DesignedMachine,
  speed: number,
): Answer<readonly MachineLine[]> {
  return thenAnswer(stateAtSpeed(designed, machine, speed), (state) =>
    answer(
      machine.frequencies.rows.flatMap(({ line }): readonly MachineLine[] => {
        const found = frequencyAt(line, state);
        if (!found.known || !(found.value > 0)) return [];
        const between = frequencyBetween(line, state) ?? { low: found.value, high: found.value };
        const called = line.name.slice(line.name.lastIndexOf('/') + 1);
        return [{ line, called, frequency: found.value, ...between, still: standsStill(line) }];
      }),
    ),
  );
}

function stateAtSpeed(designed: DesignedPoint, machine: DesignedMachine, speed: number): Answer<OperatingState> {
  const { train } = machine.stated;
  const shaft = shaftOf(designed, machine);
  const turn = machine.frequencies.shafts.find((each) => each.shaft === shaft)?.turn;
  if (turn === undefined) return unanswered([{ of: machine.stated.name, what: `speed of ${shaft}` }]);
  const solved = solvedTrain(train);
  return thenAnswer(turn.reduced, (terms) => {
    const slip = terms.find((each) => each.of.startsWith('slip '));
    if (slip === undefined) {
      const [term] = terms;
      if (terms.length !== 1 || term === undefined) return noSpeed(machine, shaft);
      return answer(stateAt(solved, answer(speed / Math.abs(term.times))));
    }
    return thenAnswer(operatingRange(train), ({ low, high }) => {
      if (low === high) {
        const state = stateAt(solved, answer(low));
        const others = terms
          .filter((each) => each !== slip)
          .map((each) => ({ times: each.times, source: state.sources[each.of] }));
        if (others.some(({ source }) => source?.value.known !== true)) return noSpeed(machine, shaft);
        const sum = others.reduce((total, { times, source }) => total + times * hertzOf(source!), 0);
        const value = (Math.sign(sum) * speed - sum) / slip.times;
        return answer({ ...state, sources: { ...state.sources, [slip.of]: bounded(value) } });
      }
      // A motor turns the faster the higher its line frequency, so halving finds the one that gives the speed.
      let [below, above] = [0, 2 * high];
      for (let step = 0; step < 60; step++) {
        const middle = (below + above) / 2;
        const found = frequencyAt(turn, stateAt(solved, answer(middle)));
        if (found.known && found.value > speed) above = middle;
        else below = middle;
      }
      const reached = frequencyAt(turn, stateAt(solved, answer(above)));
      return reached.known && Math.abs(reached.value - speed) < 1e-6 * speed
        ? answer(stateAt(solved, answer(above)))
        : noSpeed(machine, shaft);
    });
  });
}

function hertzOf({ value }: Bounded): number {
  return value.known ? value.value : Number.NaN;
}

function noSpeed(machine: DesignedMachine, shaft: string): Answer<never> {
  return unanswered([{ of: machine.stated.name, what: `state in which ${shaft} turns that fast` }]);
}

/** Multiples of mains frequencies, which are on every wire. */
export function nearMains(frequency: number, within: number): boolean {
  return [50, 60].some((mains) => {
    const times = Math.round(frequency / mains);
    return times >= 1 && times <= 20 && Math.abs(frequency - times * mains) <= within;
  });
}

/** The machine lines, or multiples of them, that a seen frequency may be. */
export function explained(
  lines: readonly MachineLine[],
  frequency: number,
  within: number,
  harmonics = 10,
): readonly MachineLine[] {
  return lines.filter(({ low, high, line }) => {
    const most = Math.max(harmonics, line.harmonics);
    for (let times = 1; times <= most; times++) {
      if (times * low - within > frequency) return false;
      if (frequency <= times * high + within) return true;
    }
    return false;
  });
}
