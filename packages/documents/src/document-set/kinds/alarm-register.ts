import { type DesignedPoint, type RegisterRow, showMeasure } from '@soundpost/core';
import { facts, list, note } from '../blocks.ts';
import { answered, answerText, count, levelCell, none, numberIn, statedCell, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';

interface PlacedRow {
  readonly designed: DesignedPoint;
  readonly row: RegisterRow;
}

/** Every level somebody is told of, as it is read in its unit, on the loop, on the card and at a voltage output. */
export const alarmRegister = issuedKind({
  kind: 'alarm-register',
  title: 'Alarm register',
  readers: 'whoever sets the alarms in the controller, and whoever later asks why they stand where they do',
  orientation: 'landscape',
  sheets: (design, showing) => {
    const all = everyPoint(design);
    const rows = all.flatMap(({ designed }) =>
      (designed.alarms?.register ?? []).map((row): PlacedRow => ({ designed, row })),
    );
    const without = all.flatMap(({ designed }) => (designed.alarms === undefined ? [designed.point.of] : []));
    return [
      {
        title: 'Levels',
        blocks: [
          setTable<PlacedRow>(
            'alarms',
            'Levels of every point that has an alarm',
            [
              textColumn('Tag', ({ designed }) => words(designed.point.of), 2.6),
              textColumn('Level', ({ row }) => words(row.name), 1.1),
              textColumn('Does', ({ row }) => words(deedOf(row)), 0.7),
              measureColumn('Set at', ({ row }) => answered(row.level, (level) => levelCell(level, showing)), 1.5),
              numberColumn('Current', 'mA', ({ row }) =>
                answered(row.current, (value) => numberIn('mA', 'current', value, { ...showing, digits: 5 })),
              ),
              numberColumn('Of the range', '%', ({ row }) =>
                answered(row.share, (value) => numberIn('%', 'fraction', value, showing)),
              ),
              numberColumn('Counts', '', ({ row }) => answered(row.counts, count), 0.9),
              measureColumn(
                'At the output',
                ({ row }) => answered(row.voltage, (level) => levelCell(level, showing)),
                1.3,
              ),
              numberColumn(
                'Delay',
                's',
                ({ row, designed }) =>
                  deedOf(row) === undefined
                    ? none
                    : statedCell(row.delay, `${designed.point.of}/${row.name}`, 'delay', (value) =>
                        numberIn('s', 'time', value, showing),
                      ),
                0.8,
              ),
              textColumn('Because', ({ row }) => words(showMeasure(row.because, showing)), 3),
            ],
            rows,
            'No alarm is stated for any point.',
          ),
          note(
            'A dash stands where there is nothing to tell: no deed and no delay of a level that only marks a place on the range, no current or voltage of an input that has none. Counts are those of the input card.',
          ),
          ...(without.length === 0 ? [] : [note('No alarm is stated for these points:'), ...list(without)]),
        ],
      },
      ...windows(
        all.map((each) => each.designed),
        showing,
      ),
    ];
  },
});

/** Rows called alert and trip act; others where they say so. */
function deedOf({ name, does }: RegisterRow): string | undefined {
  return does ?? (name === 'alert' || name === 'trip' ? name : undefined);
}

function windows(points: readonly DesignedPoint[], showing: Parameters<typeof levelCell>[1]) {
  return points.flatMap(({ point, window }) => {
    if (window === undefined) return [];
    const shown = (name: 'alertLow' | 'alertHigh' | 'trip') =>
      answerText(window.window, (known) => {
        const cell = levelCell(known[name], showing);
        return cell.is === 'measure' ? `${cell.shown} ${cell.unit}` : '';
      });
    return [
      {
        title: `Window about the motion the machine works by: ${point.of}`,
        blocks: [
          facts([
            ['alert below', shown('alertLow')],
            ['alert above', shown('alertHigh')],
            ['trip above', shown('trip')],
          ]),
        ],
      },
    ];
  });
}
