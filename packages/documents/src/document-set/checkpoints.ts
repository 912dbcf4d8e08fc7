import {
  type DesignedPoint,
  type LoopCheckpoint,
  type LoopTolerance,
  loopAndCard,
  loopCheckpoints,
  loopTolerance,
  type Showing,
} from '@soundpost/core';
import { answered, count, levelCell, numberIn } from './cells.ts';
import type { SetTable } from './record.ts';
import { blankColumn, measureColumn, numberColumn, setTable, type TableColumn } from './set-table.ts';

/** What the loop reads at 4, 8, 12, 16 and 20 mA; with room for what is found where a test is made of it. */
export function checkpointTable(
  { point, appraisal }: DesignedPoint,
  showing: Showing,
  found = false,
): readonly SetTable[] {
  if (appraisal?.prediction.loop === undefined) return [];
  const { loop, card } = loopAndCard(appraisal.prediction.chain);
  if (loop === undefined) return [];
  const { chain } = appraisal.prediction;
  const rows = loopCheckpoints(loop, card).map((checkpoint): Checked => {
    const tolerance = loopTolerance(chain, checkpoint.current);
    return { ...checkpoint, ...(tolerance === undefined ? {} : { tolerance }) };
  });
  const agreed = rows.some(({ tolerance }) => tolerance?.counts.known !== true || !tolerance.withTransmitter.known);
  const toldOf = (show: keyof LoopTolerance) => rows.some(({ tolerance }) => tolerance?.[show].known === true);
  return [
    setTable<Checked>(
      `${point.of} checkpoints`,
      'What a calibrator sets, and what the display must show',
      [
        numberColumn('Current', 'mA', ({ current }) => numberIn('mA', 'current', current, showing)),
        measureColumn('Display shows', ({ level }) => answered(level, (value) => levelCell(value, showing))),
        numberColumn('Counts of the card', '', ({ counts }) => answered(counts, count)),
        ...(found
          ? [
              ...(toldOf('level') ? [levelWithin('Within \u00b1', 'level', showing)] : []),
              ...(toldOf('counts')
                ? [
                    numberColumn<Checked>('Counts within \u00b1', '', ({ tolerance }) =>
                      answered(tolerance?.counts, count),
                    ),
                  ]
                : []),
              ...(toldOf('withTransmitter')
                ? [levelWithin('With transmitter \u00b1', 'withTransmitter', showing)]
                : []),
              blankColumn<Checked>('Found in the controller'),
              blankColumn<Checked>('Counts found'),
              ...(agreed ? [blankColumn<Checked>('Tolerance agreed')] : []),
            ]
          : []),
      ],
      rows,
      'The loop has no scale.',
    ),
  ];
}

type Checked = LoopCheckpoint & { readonly tolerance?: LoopTolerance };

function levelWithin(head: string, which: 'level' | 'withTransmitter', showing: Showing): TableColumn<Checked> {
  return measureColumn(head, ({ tolerance }) => answered(tolerance?.[which], (value) => levelCell(value, showing)));
}
