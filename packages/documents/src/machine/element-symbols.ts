import type { MachineElementKindName } from '@soundpost/core';
import { line, type Mark, polyline, rectangle } from '../drawing/drawing.ts';
import { drawnAs, type SymbolName } from '../drawing/symbols.ts';

/** A symbol on the centre line of a shaft, about 40 wide and 44 high. */
export type ElementSymbol = (x: number, y: number) => readonly Mark[];

function symbolOf(name: SymbolName, drawn: ElementSymbol): ElementSymbol {
  return (x, y) => drawnAs(name, ...drawn(x, y));
}

const motor = symbolOf('electric machine', (x, y) => [
  rectangle(x - 26, y - 20, 52, 40, 'paper'),
  ...[-12, 0, 12].map((step) => line(x + step, y - 20, x + step, y + 20, 'thin')),
  line(x - 20, y + 20, x - 20, y + 25, 'ink'),
  line(x + 20, y + 20, x + 20, y + 25, 'ink'),
]);

/** Rolling elements above and below the shaft. */
const rolling = symbolOf('rolling bearing', (x, y) => [
  rectangle(x - 8, y - 18, 16, 11, 'paper'),
  rectangle(x - 8, y + 7, 16, 11, 'paper'),
  { is: 'circle', x, y: y - 12.5, radius: 4, look: 'ink' },
  { is: 'circle', x, y: y + 12.5, radius: 4, look: 'ink' },
]);

const film = symbolOf('fluid-film bearing', (x, y) => [
  rectangle(x - 11, y - 15, 22, 9, 'hatched'),
  rectangle(x - 11, y + 6, 22, 9, 'hatched'),
]);

const toothed = symbolOf('toothed wheel', (x, y) => [
  rectangle(x - 7, y - 18, 14, 36, 'paper'),
  ...[-14, -9, 9, 14].map((step) => line(x - 7, y + step, x + 7, y + step, 'thin')),
]);

const pulley = symbolOf('pulley', (x, y) => [
  rectangle(x - 8, y - 16, 16, 32, 'paper'),
  polyline(
    [
      [x - 8, y - 16],
      [x - 3, y - 11],
      [x + 3, y - 11],
      [x + 8, y - 16],
    ],
    'thin',
  ),
]);

const halves = symbolOf('coupling', (x, y) => [
  rectangle(x - 9, y - 12, 7, 24, 'paper'),
  rectangle(x + 2, y - 12, 7, 24, 'paper'),
]);

const wheel = symbolOf('wheel', (x, y) => [
  polyline(
    [
      [x - 5, y - 20],
      [x + 9, y - 8],
      [x + 9, y + 8],
      [x - 5, y + 20],
    ],
    'paper',
    true,
  ),
  line(x - 5, y - 20, x - 5, y + 20, 'ink'),
]);

const planets = symbolOf('planets', (x, y) => [
  rectangle(x - 9, y - 20, 18, 40, 'paper'),
  { is: 'circle', x, y: y - 11, radius: 5, look: 'ink' },
  { is: 'circle', x, y: y + 11, radius: 5, look: 'ink' },
]);

const crank = symbolOf('crank', (x, y) => [
  rectangle(x - 7, y - 20, 14, 12, 'paper'),
  line(x, y - 8, x + 7, y, 'ink'),
  { is: 'circle', x, y, radius: 8, look: 'ink' },
]);

const eccentric = symbolOf('eccentric', (x, y) => [
  { is: 'circle', x, y, radius: 13, look: 'ink' },
  polyline(
    [
      [x, y],
      [x - 9, y + 9],
      [x, y + 13],
      [x + 9, y + 9],
    ],
    'solid',
    true,
  ),
]);

const screws = symbolOf('pair of screws', (x, y) => [
  rectangle(x - 18, y - 10, 36, 20, 'paper'),
  ...[-12, -4, 4, 12].map((step) => line(x + step - 4, y + 10, x + step + 4, y - 10, 'thin')),
]);

/** A frequency that nothing makes but the structure answers to. */
const wave = symbolOf('structural mode', (x, y) => [
  polyline(
    Array.from({ length: 17 }, (_, step) => [x - 16 + 2 * step, y - 10 * Math.sin((step / 8) * Math.PI)] as const),
    'ink',
  ),
]);

/** A probe above the mark that passes under it once a turn. */
const onceATurn = symbolOf('phase reference', (x, y) => [
  rectangle(x - 4, y - 20, 8, 12, 'paper'),
  rectangle(x - 3, y - 3, 6, 6, 'solid'),
]);

/** To begin a kind with, until it has a symbol of its own. */
export const plainBody = symbolOf('body', (x, y) => [rectangle(x - 12, y - 14, 24, 28, 'paper')]);

/** A kind without a symbol does not compile. */
const symbols: Readonly<Record<MachineElementKindName, ElementSymbol>> = {
  'induction-motor': motor,
  'synchronous-motor': motor,
  'rolling-bearing': rolling,
  'fluid-film-bearing': film,
  'gear-pair': toothed,
  'worm-pair': toothed,
  'planetary-stage': planets,
  'belt-drive': pulley,
  'timing-belt': pulley,
  'chain-drive': pulley,
  'friction-pair': halves,
  coupling: halves,
  impeller: wheel,
  'hydraulic-turbine': wheel,
  'screw-rotors': screws,
  'reciprocating-machine': crank,
  'screen-exciter': eccentric,
  'structural-mode': wave,
  'critical-speed': wave,
  'phase-reference': onceATurn,
};

export function elementSymbol(kind: MachineElementKindName): ElementSymbol {
  return symbols[kind];
}
