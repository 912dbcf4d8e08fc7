import { type Answer, fromAll, type Level, level, type Stated, type Tolerance, unanswered } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';
import { partsOf } from './line.ts';

/** How far a display may be off at one current: with a calibrator in place of the transmitter, and with it. */
export interface LoopTolerance {
  /** Of the display, half-width. */
  readonly level: Answer<Level>;
  /** In counts of the card, with half a count of its resolution. */
  readonly counts: Answer<number>;
  /** Of the display, half-width, the transmitter included. */
  readonly withTransmitter: Answer<Level>;
}

/**
 * ΔI = a·(I₁ − I₀) + g·I for what a calibrator sets, with a the accuracy of the card over the span of its stated currents and
 * g the gain tolerance of an isolator; Δx = x_range·ΔI/16 mA and
 * ΔN = ΔI·(N₁ − N₀)/(I₁ − I₀) + ½; with the transmitter its zero error z of
 * the 16 mA and its tolerance s of the reading are added, ΔI + z·16 mA + s·(I − 4 mA). All at their worst and in step; valid
 * between 4 and 20 mA. Absent for a chain without a loop. Common practice, no source.
 */
export function loopTolerance(chain: MeasuringChain, at: number): LoopTolerance | undefined {
  const { oneNumber } = chain.transducer;
  const { loopCard, cardAccuracy } = chain.input;
  if (oneNumber === undefined || loopCard === undefined) return undefined;
  const accuracy = cardAccuracy ?? unanswered([{ of: chain.input.of, what: 'accuracy' }]);
  const gains = fromAll(
    Object.fromEntries(
      partsOf(chain.line).flatMap(({ of, isolation }) =>
        isolation === undefined ? [] : [[of, isolation.gainTolerance ?? unanswered([{ of, what: 'gain tolerance' }])]],
      ),
    ) as Readonly<Record<string, Answer<Tolerance>>>,
    (known) => Object.values(known).reduce((sum, each) => sum + halfWidth(each), 0),
  );
  const span = fromAll({ I0: loopCard.currentAtLow, I1: loopCard.currentAtHigh }, (v) => v.I1 - v.I0);
  const current = fromAll({ accuracy, gains, span }, (v) => v.accuracy * v.span + v.gains * at);
  const stated = chain.parts.transducer.sheet.values.sensitivityTolerance as Stated<Tolerance> | undefined;
  const sensitivity: Answer<number> =
    stated?.known === true
      ? { known: true, value: halfWidth(stated.value) }
      : unanswered([{ of: chain.parts.transducer.name, what: 'sensitivity tolerance' }]);
  const asLevel = (amperes: Answer<number>): Answer<Level> =>
    fromAll({ amperes, range: oneNumber.range }, (v) =>
      level(v.range.quantity, (v.range.value * v.amperes) / 0.016, v.range.detector),
    );
  return {
    level: asLevel(current),
    counts: fromAll(
      { current, span, N0: loopCard.countsAtLow, N1: loopCard.countsAtHigh },
      (v) => (v.current * (v.N1 - v.N0)) / v.span + 0.5,
    ),
    withTransmitter: asLevel(
      fromAll(
        { current, zero: oneNumber.zeroError, sensitivity },
        (v) => v.current + v.zero * 0.016 + v.sensitivity * (at - 0.004),
      ),
    ),
  };
}

function halfWidth({ low, high }: Tolerance): number {
  return Math.max(Math.abs(low), Math.abs(high));
}
