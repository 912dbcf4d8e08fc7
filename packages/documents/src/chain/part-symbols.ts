import { label, line, type Mark, polyline, rectangle } from '../drawing/drawing.ts';
import { drawnAs, type SymbolName } from '../drawing/symbols.ts';
import type { PartKindName } from './key-fields.ts';

/** Where a part stands in the chain. */
export type Role = 'mount' | 'transducer' | 'cable' | 'in the line' | 'input';

/** A symbol about its middle, 48 wide and 36 high; the signal passes from left to right. */
export type PartSymbol = (x: number, y: number) => readonly Mark[];

function symbolOf(name: SymbolName, drawn: PartSymbol): PartSymbol {
  return (x, y) => drawnAs(name, ...drawn(x, y));
}

const housing = (x: number, y: number): Mark => rectangle(x - 18, y - 15, 36, 30, 'paper');

/** A mass on the element that feels it. */
const seismic = symbolOf('seismic transducer', (x, y) => [
  housing(x, y),
  rectangle(x - 9, y - 9, 18, 9, 'solid'),
  rectangle(x - 5, y, 10, 9, 'hatched'),
  line(x - 12, y + 9, x + 12, y + 9, 'ink'),
]);

/** A coil about a magnet. */
const coil = symbolOf('moving coil', (x, y) => [
  housing(x, y),
  ...[-9, -3, 3, 9].map((step): Mark => ({ is: 'circle', x: x + step, y: y - 2, radius: 3.6, look: 'thin' })),
  rectangle(x - 8, y + 4, 16, 5, 'solid'),
]);

/** A tip before a shaft. */
const probe = symbolOf('proximity probe', (x, y) => [
  { is: 'circle', x: x - 10, y, radius: 9, look: 'hatched' },
  rectangle(x + 3, y - 5, 15, 10, 'paper'),
  rectangle(x + 2, y - 7, 3, 14, 'solid'),
]);

/** A sensor that sends one number. */
const detecting = symbolOf('detecting sensor', (x, y) => [
  housing(x, y),
  polyline(
    [
      [x - 12, y + 6],
      [x - 8, y - 8],
      [x - 4, y + 6],
      [x, y - 8],
      [x + 2, y - 1],
    ],
    'thin',
  ),
  line(x + 3, y - 1, x + 14, y - 1, 'ink'),
]);

/** A screw in a hatched wall, whatever holds it. */
const screw = symbolOf('mount', (x, y) => [
  rectangle(x - 20, y - 15, 16, 30, 'hatched'),
  rectangle(x - 4, y - 4, 18, 8, 'paper'),
  ...[0, 4, 8].map((step) => line(x - 2 + step, y - 4, x + 1 + step, y + 4, 'thin')),
]);

/** Two cores in a screen. */
const screenedCores = symbolOf('screened cable', (x, y) => [
  rectangle(x - 20, y - 8, 40, 16, 'paper', 8),
  line(x - 20, y - 3, x + 20, y - 3, 'thin'),
  line(x - 20, y + 3, x + 20, y + 3, 'thin'),
]);

/** Two sides without a common wire. */
const isolator = symbolOf('isolator', (x, y) => [
  rectangle(x - 20, y - 15, 40, 30, 'paper'),
  line(x - 2, y - 15, x - 2, y + 15, 'thin'),
  line(x + 2, y - 15, x + 2, y + 15, 'thin'),
]);

/** A staircase in a frame: what comes in smooth leaves in steps. */
const staircase = symbolOf('analogue input', (x, y) => [
  polyline(
    [
      [x - 18, y],
      [x - 8, y - 15],
      [x + 18, y - 15],
      [x + 18, y + 15],
      [x - 8, y + 15],
    ],
    'paper',
    true,
  ),
  polyline(
    [
      [x - 6, y + 8],
      [x - 1, y + 8],
      [x - 1, y + 2],
      [x + 4, y + 2],
      [x + 4, y - 4],
      [x + 9, y - 4],
      [x + 9, y - 9],
      [x + 14, y - 9],
    ],
    'thin',
  ),
]);

/** A rod that moves in three windings. */
const core = symbolOf('differential transformer', (x, y) => [
  ...[-14, -4, 6].map((step) => rectangle(x + step, y - 10, 8, 20, 'hatched')),
  rectangle(x - 20, y - 3, 30, 6, 'solid'),
]);

/** A kind without a symbol does not compile. */
const symbols: Readonly<Record<PartKindName, PartSymbol>> = {
  'iepe-accelerometer': seismic,
  'charge-accelerometer': seismic,
  'capacitive-dc': seismic,
  'piezo-velocity': seismic,
  'low-frequency-velocity': seismic,
  'dual-output': seismic,
  'moving-coil': coil,
  'shaft-rider': coil,
  'proximity-system': probe,
  lvdt: core,
  'loop-sensor': detecting,
  stud: screw,
  'adhesive-pad': screw,
  'quick-lock': screw,
  'flat-magnet': screw,
  'two-pole-magnet': screw,
  'hand-probe': screw,
  'isolating-stud': screw,
  'signal-cable': screenedCores,
  'loop-supply': symbolOf('loop supply', (x, y) => [
    rectangle(x - 18, y - 15, 36, 30, 'paper'),
    line(x - 8, y - 8, x - 8, y + 8, 'ink'),
    line(x + 2, y - 4, x + 2, y + 4, 'target'),
    label(x + 6, y - 3, '+', { size: 11 }),
  ]),
  'series-resistance': symbolOf('resistance', (x, y) => [rectangle(x - 18, y - 6, 36, 12, 'paper')]),
  'shunt-diode-barrier': symbolOf('shunt-diode barrier', (x, y) => [
    rectangle(x - 20, y - 15, 40, 34, 'paper'),
    line(x - 20, y, x + 20, y, 'thin'),
    line(x + 4, y, x + 4, y + 13, 'thin'),
    polyline(
      [
        [x - 1, y + 5],
        [x + 9, y + 5],
        [x + 4, y + 11],
      ],
      'solid',
      true,
    ),
    line(x - 2, y + 13, x + 10, y + 13, 'ink'),
  ]),
  'galvanic-isolator-iepe': isolator,
  'galvanic-isolator-loop': isolator,
  'junction-box': symbolOf('junction box', (x, y) => [
    rectangle(x - 16, y - 13, 32, 26, 'paper'),
    ...[-6, 6].map((step): Mark => ({ is: 'circle', x: x + step, y, radius: 3, look: 'ink' })),
  ]),
  'constant-current-input': staircase,
  'direct-voltage-input': staircase,
  'current-card': staircase,
};

export function partSymbol(kind: PartKindName): PartSymbol {
  return symbols[kind];
}
