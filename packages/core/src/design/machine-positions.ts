import { type PositionAdvice, positionAdviceFor } from '../demand/position-advice.ts';
import type { Train } from '../machine/train.ts';

/** Where the trade measures on a machine of these elements, the general first: advice, never a limit. */
export function machinePositions({ elements }: Train): readonly PositionAdvice[] {
  return positionAdviceFor([...new Set(elements.map(({ kind }) => kind))]);
}
