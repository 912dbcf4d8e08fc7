import { fraction } from '../quantity/index.ts';
import { type SolvedTrain, speedOver } from './solved-train.ts';
import { boundsOver, operatingStates } from './state.ts';

/** The least and the greatest speed of a shaft over all states, in hertz; nothing where it is open. */
export function speedRange(
  solved: SolvedTrain,
  shaft: string,
): { readonly low: number; readonly high: number } | undefined {
  const over = speedOver(solved.speeds, solved.reference, [{ shaft, times: 1, exact: fraction(1) }]);
  if (!over.known) return undefined;
  const bounds = operatingStates(solved).map((state) => boundsOver(over.value, state.sources));
  if (bounds.some((each) => each === undefined)) return undefined;
  return { low: Math.min(...bounds.map((each) => each!.low)), high: Math.max(...bounds.map((each) => each!.high)) };
}
