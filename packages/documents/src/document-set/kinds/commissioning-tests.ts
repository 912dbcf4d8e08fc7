import { type DesignedPoint, type RegisterRow, type Showing, type Stated, showTolerance } from '@soundpost/core';
import { facts, heading, note, signatures } from '../blocks.ts';
import { answered, answerText, count, levelCell, numberIn, words } from '../cells.ts';
import { checkpointTable } from '../checkpoints.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block } from '../record.ts';
import { blankColumn, measureColumn, numberColumn, setTable, textColumn } from '../set-table.ts';
import { terminalTable } from '../terminals.ts';

/** What is to be found at each loop before it is trusted: expected, tolerance, and a blank for what was found. */
export const commissioningTests = issuedKind({
  kind: 'commissioning-tests',
  title: 'Commissioning test sheets',
  readers: 'whoever tests a loop with meter and calibrator, and whoever accepts it',
  orientation: 'portrait',
  sheets: (design, showing) =>
    everyPoint(design).flatMap(({ designed }) =>
      designed.appraisal === undefined
        ? []
        : [madeSheet(`Test of ${designed.point.of}`, [designed], (each) => tests(each, showing))],
    ),
});

function tests(designed: DesignedPoint, showing: Showing): readonly Block[] {
  const { point, appraisal } = designed;
  const { parts, transducer } = appraisal!.prediction.chain;
  const tolerance = parts.transducer.sheet.values.sensitivityTolerance as Stated<{ low: number; high: number }>;
  return [
    facts([
      ['location', point.location],
      ['direction', answerText(point.direction, (direction) => direction)],
      ['chain', appraisal!.prediction.chain.of],
    ]),
    setTable<readonly [string, string]>(
      `${point.of} inspection`,
      'Looked at before power is on',
      [
        textColumn('Is', ([what]) => words(what), 2),
        textColumn('Expected', ([, expected]) => words(expected), 3),
        blankColumn('Found', 2),
      ],
      [
        ['transducer, type and serial number', parts.transducer.name],
        ['mount', parts.mount.name],
        ['direction', answerText(point.direction, (direction) => direction)],
        ['cable', parts.cable.name],
        ['input and channel', parts.input.name],
      ],
      '',
    ),
    terminalTable(designed, showing, true),
    ...checkpointTable(designed, showing, true),
    ...(transducer.signal === 'overall' ? [] : [sensitivityTable(designed, tolerance, showing)]),
    ...alarmTests(designed, showing),
    note(
      'Voltages are passed between lowest and highest. At a checkpoint the reading is passed within what card and isolator are stated to keep while a calibrator stands in place of the transmitter; with the transmitter moved by a known motion, within the wider figure. The most each may be off is added up. Where a column for it stands empty, agree the tolerance before the test.',
    ),
    ...(designed.area === undefined ? [] : [note(designed.area.caution)]),
    heading('Signed'),
    signatures('tested', 'witnessed', 'accepted'),
  ];
}

function sensitivityTable(
  { point, appraisal }: DesignedPoint,
  tolerance: Stated<{ readonly low: number; readonly high: number }>,
  showing: Showing,
): Block {
  const { transducer, sensitivity } = appraisal!.prediction.chain;
  const quantity = `voltage per ${transducer.senses}` as const;
  const unit = { acceleration: 'mV/g', velocity: 'mV/(mm/s)', displacement: 'mV/um' }[transducer.senses];
  return setTable<string>(
    `${point.of} sensitivity`,
    'Sensitivity to be set in the input, and to be found with a shaker or a known gap',
    [
      textColumn('Is', (what) => words(what), 2),
      numberColumn(
        'Expected',
        unit,
        () => answered(sensitivity, (value) => numberIn(unit, quantity, value, showing)),
        1.2,
      ),
      textColumn(
        'Tolerance of one piece',
        () => words(tolerance?.known ? showTolerance(tolerance.value, showing) : 'unknown'),
        1.4,
      ),
      blankColumn('Found', 1.6),
    ],
    ['voltage per motion at the input'],
    '',
  );
}

function alarmTests({ point, alarms }: DesignedPoint, showing: Showing): readonly Block[] {
  const acting = (alarms?.register ?? []).filter(
    ({ name, does }) => does !== undefined || name === 'alert' || name === 'trip',
  );
  if (acting.length === 0) return [];
  return [
    setTable<RegisterRow>(
      `${point.of} alarms`,
      'Alarms: raise slowly, note where each acts and after how long',
      [
        textColumn('Level', ({ name }) => words(name), 1),
        measureColumn('Acts at', ({ level }) => answered(level, (value) => levelCell(value, showing)), 1.4),
        numberColumn('Current', 'mA', ({ current }) =>
          answered(current, (value) => numberIn('mA', 'current', value, { ...showing, digits: 5 })),
        ),
        numberColumn('Counts', '', ({ counts }) => answered(counts, count)),
        numberColumn('Delay', 's', ({ delay }) =>
          delay?.known === true
            ? numberIn('s', 'time', delay.value, showing)
            : { is: 'unknown', missing: [{ of: point.of, what: 'delay' }] },
        ),
        blankColumn('Acted at', 1.2),
        blankColumn('After, s', 1),
      ],
      acting,
      '',
    ),
  ];
}
