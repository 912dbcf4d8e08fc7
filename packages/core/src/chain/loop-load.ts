import { type Answer, fromAll, unanswered } from '../quantity/index.ts';
import { lineResistance } from './bias-window.ts';
import type { MeasuringChain } from './chain.ts';

export interface LoopPrediction {
  readonly resistance: Answer<number>;
  readonly largestResistance: Answer<number>;
  /** Voltage left over at the failure current. */
  readonly spare: Answer<number>;
  readonly failureCurrent: number;
}

/** The current at which a loop must still hold: a NAMUR NE 43 high failure signal of 21 mA, and half a milliampere more. */
export const failureCurrent = 0.0215;

/** R = card + line; R_max = (lowest supply − device minimum) / failure current; spare = supply − device − I·R. */
export function loopPrediction(chain: MeasuringChain): LoopPrediction | undefined {
  const { oneNumber } = chain.transducer;
  const { loopCard } = chain.input;
  if (oneNumber === undefined || loopCard === undefined) return undefined;
  const supply = chain.inLine.find((part) => part.voltage !== undefined)?.voltage;
  const lowest: Answer<number> =
    supply === undefined
      ? unanswered([{ of: chain.of, what: 'loop supply' }])
      : fromAll({ supply }, ({ supply: span }) => span.low as number);
  const resistance = fromAll(
    { card: loopCard.resistance, line: lineResistance(chain) },
    ({ card, line }) => card + line,
  );
  const room = fromAll({ lowest, minimum: oneNumber.minimumVoltage }, (v) => v.lowest - v.minimum);
  return {
    resistance,
    largestResistance: fromAll({ room }, ({ room: volts }) => volts / failureCurrent),
    spare: fromAll({ room, resistance }, ({ room: volts, resistance: ohms }) => volts - failureCurrent * ohms),
    failureCurrent,
  };
}
