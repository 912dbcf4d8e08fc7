import {
  type DesignedMachine,
  type FrequencyRow,
  type MapMeeting,
  type ShaftRow,
  type Showing,
  type SpeedMap,
  showQuantity,
  showSpan,
  speedMap,
  theMissing,
} from '@soundpost/core';
import { alongWords, speedMapDrawing } from '../../machine/speed-map-drawing.ts';
import { speedMapCaption } from '../../machine/speed-map-section.ts';
import { drawn, heading, list, note, paragraph } from '../blocks.ts';
import { answered, numberIn, unknown, words } from '../cells.ts';
import { machineTitle } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block } from '../record.ts';
import { numberColumn, setTable, type TableColumn, textColumn } from '../set-table.ts';

/** Every frequency a machine can make, and where they meet what stands still: one sheet for each machine. */
export const frequencyTables = issuedKind({
  kind: 'frequency-tables',
  title: 'Frequency tables and speed maps',
  readers: 'whoever reads the spectra: what each line of the machine is called and where it lies',
  orientation: 'landscape',
  sheets: ({ machines }, showing) =>
    machines.map((machine) =>
      madeSheet(machineTitle(machine), [machine], (each) => [
        shaftTable(each, showing),
        lineTable(each, showing),
        ...mapBlocks(each, showing),
      ]),
    ),
});

/** Digits that tell a frequency to better than a tenth of a part in a thousand. */
const digits = 5;

function stateColumns<Row extends FrequencyRow | ShaftRow>(
  { frequencies }: DesignedMachine,
  unit: 'Hz' | 'r/min',
  showing: Showing,
): readonly TableColumn<Row>[] {
  const quantity = unit === 'Hz' ? 'frequency' : 'shaft speed';
  return frequencies.states.map(({ name }) =>
    numberColumn<Row>(`At ${name}`, unit, (row) =>
      answered(row.cells.find((cell) => cell.state === name)?.frequency, (value) =>
        numberIn(unit, quantity, value, { ...showing, digits }),
      ),
    ),
  );
}

function shaftTable(machine: DesignedMachine, showing: Showing): Block {
  const { frequencies, stated } = machine;
  return setTable<ShaftRow>(
    `${stated.name} shafts`,
    `Shafts, counted in turns of ${frequencies.reference}; a minus turns the other way`,
    [
      textColumn('Shaft', ({ shaft }) => words(shaft), 2),
      textColumn('Exact ratio', ({ ratio }) => answered(ratio, (value) => words(value.replace('-', '\u2212'))), 1.2),
      ...stateColumns<ShaftRow>(machine, 'r/min', showing),
    ],
    frequencies.shafts,
    'No shaft is stated.',
  );
}

function lineTable(machine: DesignedMachine, showing: Showing): Block {
  const { frequencies, stated } = machine;
  return setTable<FrequencyRow>(
    `${stated.name} lines`,
    'Lines: whole numbers and fractions in a form are exact; the range is over all speeds, slip included',
    [
      textColumn('Line', ({ line }) => words(line.name), 2.2),
      textColumn('What it is', ({ line }) => words(line.meaning), 2.6),
      textColumn(
        'Form',
        ({ line, form }) => (form === undefined ? unknown(line.form.known ? [] : line.form.missing) : words(form)),
        2.4,
      ),
      ...stateColumns<FrequencyRow>(machine, 'Hz', showing),
      numberColumn('Lowest', 'Hz', ({ range }) =>
        answered(range, ({ low }) => numberIn('Hz', 'frequency', low, { ...showing, digits })),
      ),
      numberColumn('Highest', 'Hz', ({ range }) =>
        answered(range, ({ high }) => numberIn('Hz', 'frequency', high, { ...showing, digits })),
      ),
    ],
    frequencies.rows,
    'No element of the train makes a line.',
  );
}

function mapBlocks(machine: DesignedMachine, showing: Showing): readonly Block[] {
  const found = speedMap(machine.stated.train);
  if (!found.known) return [paragraph(`No speed map can be drawn: not known is ${theMissing(found.missing)}.`)];
  const map = found.value;
  const drawing = speedMapDrawing(machine, showing, 'wide');
  return [
    heading('Speed map'),
    ...(drawing === undefined
      ? [paragraph('The machine runs at one speed, so there is nothing to draw over it.')]
      : []),
    ...drawn(`${machine.stated.name} speed map`, drawing, speedMapCaption),
    meetingTable(machine, map, showing),
    ...(map.left.length === 0 ? [] : [note('Left out of the map, because something is not known:'), ...list(map.left)]),
  ];
}

function meetingTable({ stated }: DesignedMachine, map: SpeedMap, showing: Showing): Block {
  const name = map.along.by === 'shaft' ? 'shaft speed' : 'frequency';
  const range = (quantity: 'frequency' | 'shaft speed', { low, high }: MapMeeting['band']) =>
    low === high ? showQuantity(quantity, low, showing) : showSpan(quantity, { low, high } as never, showing);
  return setTable<MapMeeting>(
    `${stated.name} meetings`,
    `Orders that meet or come near what stands still, over ${alongWords(map)}`,
    [
      textColumn('Order', ({ order, harmonic }) => words(`${harmonic === 1 ? '' : `${harmonic} × `}${order.name}`), 2),
      textColumn('Stands still', ({ standing }) => words(standing.name), 2),
      textColumn('It lies at', ({ band }) => words(range('frequency', band)), 1.4),
      textColumn(
        'Met at',
        ({ inside, nearest }) =>
          words(
            inside.length > 0
              ? inside.map((each) => range(name, each)).join('; ')
              : `not in the range: ${showQuantity('fraction', nearest.relative, showing)} away at ${showQuantity(name, nearest.at, showing)}`,
          ),
        2.4,
      ),
    ],
    map.meetings,
    'No order comes near anything stated that stands still.',
  );
}
