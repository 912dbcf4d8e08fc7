import { type Answer, answer, fromAll, type Span, unanswered } from '../quantity/index.ts';
import type { MeasuringChain } from './chain.ts';
import { fieldSide, lineResistance, partsOf } from './line.ts';

export interface LoopPrediction {
  readonly resistance: Answer<number>;
  /** What it is made of: the card, and everything in the line. */
  readonly resistances: Answer<{ readonly card: number; readonly line: number }>;
  readonly largestResistance: Answer<number>;
  /** Voltage left over at the failure current. */
  readonly spare: Answer<number>;
  readonly failureCurrent: number;
}

/** The current at which a loop must still hold: a NAMUR NE 43 high failure signal of 21 mA, and half a milliampere more. */
export const failureCurrent = 0.0215;

/**
 * R = card + line; R_max = (lowest supply − device minimum) / failure current; spare = supply − device − I·R. Where an
 * isolator feeds the loop it ends there: its voltage and its own resistance count, the card behind it does not.
 */
export function loopPrediction(chain: MeasuringChain): LoopPrediction | undefined {
  const { oneNumber } = chain.transducer;
  const { loopCard } = chain.input;
  if (oneNumber === undefined || loopCard === undefined) return undefined;
  const supply = loopVoltage(chain);
  const lowest: Answer<number> =
    supply === undefined
      ? unanswered([{ of: chain.of, what: 'loop supply' }])
      : fromAll({ supply }, ({ supply: span }) => span.low as number);
  const resistances = fromAll(
    {
      card: fieldSide(chain.line).isolator === undefined ? loopCard.resistance : answer(0),
      line: lineResistance(chain.line),
    },
    (known) => known,
  );
  const resistance = fromAll({ resistances }, ({ resistances: { card, line } }) => card + line);
  const room = fromAll({ lowest, minimum: oneNumber.minimumVoltage }, (v) => v.lowest - v.minimum);
  return {
    resistance,
    resistances,
    largestResistance: fromAll({ room }, ({ room: volts }) => volts / failureCurrent),
    spare: fromAll({ room, resistance }, ({ room: volts, resistance: ohms }) => volts - failureCurrent * ohms),
    failureCurrent,
  };
}

/** What drives the loop: the isolator in its line, or the first supply. */
export function loopVoltage(chain: MeasuringChain): Answer<Span<'voltage'>> | undefined {
  const { isolator, elements } = fieldSide(chain.line);
  if (isolator !== undefined) return isolator.voltage;
  return partsOf(elements).find((part) => part.voltage !== undefined)?.voltage;
}
