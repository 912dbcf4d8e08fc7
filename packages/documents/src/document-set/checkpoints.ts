import { type DesignedPoint, type LoopCheckpoint, loopAndCard, loopCheckpoints, type Showing } from '@soundpost/core';
import { answered, count, levelCell, numberIn } from './cells.ts';
import type { SetTable } from './record.ts';
import { blankColumn, measureColumn, numberColumn, setTable } from './set-table.ts';

/** What the loop reads at 4, 8, 12, 16 and 20 mA; with room for what is found where a test is made of it. */
export function checkpointTable(
  { point, appraisal }: DesignedPoint,
  showing: Showing,
  found = false,
): readonly SetTable[] {
  if (appraisal?.prediction.loop === undefined) return [];
  const { loop, card } = loopAndCard(appraisal.prediction.chain);
  if (loop === undefined) return [];
  return [
    setTable<LoopCheckpoint>(
      `${point.of} checkpoints`,
      'What a calibrator sets, and what the display must show',
      [
        numberColumn('Current', 'mA', ({ current }) => numberIn('mA', 'current', current, showing)),
        measureColumn('Display shows', ({ level }) => answered(level, (value) => levelCell(value, showing))),
        numberColumn('Counts of the card', '', ({ counts }) => answered(counts, count)),
        ...(found
          ? [
              blankColumn<LoopCheckpoint>('Found in the controller'),
              blankColumn<LoopCheckpoint>('Counts found'),
              blankColumn<LoopCheckpoint>('Tolerance agreed'),
            ]
          : []),
      ],
      loopCheckpoints(loop, card),
      'The loop has no scale.',
    ),
  ];
}
