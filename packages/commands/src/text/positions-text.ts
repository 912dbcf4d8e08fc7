import { type PositionAdvice, showClause } from '@soundpost/core';
import { blank, type Line, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';

/** Where to measure on a machine, in which directions and why, each with its source and how that is known. */
export function positionLines(advice: readonly PositionAdvice[], { width }: Manner): readonly Line[] {
  return [
    blank,
    ...paragraph('  Where to measure (advice, not a limit)', width),
    ...advice.flatMap(({ position, directions, because, sources }) =>
      paragraph(
        `    - ${position}; ${directions}. ${because} Source: ${sources.map(showClause).join('; ')}`,
        width,
        '      ',
      ),
    ),
  ];
}
