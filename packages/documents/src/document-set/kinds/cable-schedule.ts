import { cableRuns, type DesignedPoint, type RunOfCable, showQuantity } from '@soundpost/core';
import { note } from '../blocks.ts';
import { answered, numberIn, statedCell, unknown, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { numberColumn, setTable, textColumn } from '../set-table.ts';

interface PlacedRun {
  readonly designed: DesignedPoint;
  readonly run: RunOfCable;
}

/** Every length of cable with both its ends, its type, its length and what it puts in the line. */
export const cableSchedule = issuedKind({
  kind: 'cable-schedule',
  title: 'Cable schedule',
  readers: 'whoever orders, lays and terminates the cables: one line for each length',
  orientation: 'landscape',
  sheets: (design, showing) => {
    const length = showing.units === 'us' ? 'ft' : 'm';
    const runs = everyPoint(design).flatMap(({ designed }): readonly PlacedRun[] =>
      designed.appraisal === undefined
        ? []
        : cableRuns(designed.appraisal.prediction.chain).map((run) => ({ designed, run })),
    );
    return [
      {
        title: 'Cables',
        blocks: [
          setTable<PlacedRun>(
            'cables',
            'Lengths of cable, each counted from the transducer of its point',
            [
              textColumn('Cable', ({ designed, run }) => words(`${designed.point.of}/C${run.number}`), 3),
              textColumn('From', ({ run }) => words(run.from), 1.6),
              textColumn(
                'To',
                ({ run, designed }) =>
                  run.to === undefined
                    ? unknown([{ of: `${designed.point.of}/C${run.number}`, what: 'second end' }])
                    : words(run.to),
                1.6,
              ),
              textColumn('Type', ({ run }) => words(run.cable.name), 1),
              textColumn('Construction', ({ run }) => constructionOf(run), 2.6),
              numberColumn(
                'Length',
                length,
                ({ run }) => answered(run.length, (value) => numberIn(length, 'length', value, showing)),
                0.8,
              ),
              numberColumn(
                'There and back',
                'ohm',
                ({ run }) =>
                  answered(run.model?.loopResistance, (value) => numberIn('ohm', 'resistance', value, showing)),
                1,
              ),
              numberColumn(
                'Capacitance',
                'nF',
                ({ run }) => answered(run.model?.capacitance, (value) => numberIn('nF', 'capacitance', value, showing)),
                1,
              ),
              textColumn(
                'Screen earthed at',
                ({ designed }) =>
                  statedCell(
                    designed.stated.wiring?.values.screenEarthed,
                    designed.point.of,
                    'where the screen is earthed',
                    words,
                  ),
                1.2,
              ),
              textColumn(
                'Runs along',
                ({ designed }) =>
                  statedCell(
                    designed.stated.wiring?.values.powerCable,
                    designed.point.of,
                    'power cable that runs along',
                    words,
                  ),
                1.2,
              ),
              textColumn(
                'Apart by',
                ({ designed }) =>
                  statedCell(
                    designed.stated.wiring?.values.powerDistance,
                    designed.point.of,
                    'distance from the power cable',
                    (value) => words(showQuantity('length', value, showing)),
                  ),
                0.9,
              ),
            ],
            runs,
            'No chain is chosen, so no cable is known.',
          ),
          note(
            'A dash stands where nothing is stated of the screen or of what lies beside the cable. Lengths are those the proof was made with; measure the route before cutting.',
          ),
        ],
      },
    ];
  },
});

function constructionOf({ cable }: RunOfCable) {
  return statedCell(cable.sheet.values.construction, cable.name, 'construction', words);
}
