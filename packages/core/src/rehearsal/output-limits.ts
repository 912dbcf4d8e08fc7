import { lowerCornerOfTransducer } from '../chain/lower-corner.ts';
import type { Prediction } from '../chain/prediction.ts';
import { type Answer, answer, fromAll } from '../quantity/index.ts';
import type { ChainChange } from './defect/defect-kind.ts';
import type { OutputLimits } from './electronics.ts';

/**
 * What the output of this piece can do, its bias being known to it: up to compliance − source drop − I·R, down to
 * saturation, and I/C volts a second into its cable. Nothing where no electronics are fed.
 */
export function outputLimits(
  predicted: Prediction,
  bias: number | undefined,
  changes: readonly ChainChange[] = [],
): Answer<OutputLimits | undefined> {
  const more = changes.reduce((sum, each) => sum + (each.moreCapacitance ?? 0), 0);
  const share = changes.reduce((factor, each) => factor * (each.slew ?? 1), 1);
  const slew: Answer<number> =
    predicted.drive === undefined
      ? answer(Number.POSITIVE_INFINITY)
      : fromAll({ drive: predicted.drive }, ({ drive: { current, capacitance } }) =>
          capacitance + more > 0 ? (share * Math.max(0, current)) / (capacitance + more) : Number.POSITIVE_INFINITY,
        );
  if (predicted.bias === undefined) {
    if (predicted.drive === undefined) return answer(undefined);
    const open = { top: Number.POSITIVE_INFINITY, bottom: Number.POSITIVE_INFINITY, recovery: 0 };
    return fromAll({ slew }, (known) => ({ ...open, ...known }));
  }
  return fromAll(
    { window: predicted.bias, slew, recovery: lowerCornerOfTransducer(predicted) },
    ({ window: { low, high, swing }, slew: steepest, recovery }) => {
      const own = bias ?? (low + high) / 2;
      // The swing of the prediction is that of the worst piece; this one stands elsewhere in the tolerance.
      return {
        top: Math.max(0, swing.top + high - own),
        bottom: Math.max(0, swing.bottom + own - low),
        slew: steepest,
        recovery,
      };
    },
  );
}
