import { exactCounts, type InputCard } from '../chain/formulas/counts-scaling.ts';
import { type Answer, fromAll, type Level, level } from '../quantity/index.ts';
import type { LoopScale } from './register.ts';

/** What a loop reads at one current that a calibrator sets: the level it stands for, and the counts of the card. */
export interface LoopCheckpoint {
  /** In amperes. */
  readonly current: number;
  readonly level: Answer<Level>;
  readonly counts: Answer<number> | undefined;
}

/** Five points a quarter of the scale apart, in amperes: what every loop is checked at. Common practice, no source. */
export const checkpointCurrents = [0.004, 0.008, 0.012, 0.016, 0.02] as const;

/**
 * Level and counts at 4, 8, 12, 16 and 20 mA: x = x_low + (x_high − x_low) · (I − 4 mA)/16 mA, counts by the line of the card,
 * to the nearest whole. Valid on the straight line of the scale. What is not known of scale or card is named.
 */
export function loopCheckpoints(
  scale: Answer<LoopScale>,
  card: Answer<InputCard> | undefined,
): readonly LoopCheckpoint[] {
  return checkpointCurrents.map((current) => ({
    current,
    level: fromAll({ scale }, ({ scale: { low, high } }) =>
      level(high.quantity, low.value + ((high.value - low.value) * (current - 0.004)) / 0.016, high.detector),
    ),
    counts: card === undefined ? undefined : fromAll({ card }, (known) => Math.round(exactCounts(current, known.card))),
  }));
}
