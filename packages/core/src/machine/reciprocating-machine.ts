import { answerOf, choiceField, countField, fromAll, optional, quantityField, type Sheet } from '../quantity/index.ts';
import { reciprocatingPractice } from '../source/reciprocating-practice.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, type ElementLine, linesFrom, machineElementKind } from './element.ts';
import { counted, turning } from './form.ts';

const sources = [clause(reciprocatingPractice)];
const line = linesFrom(sources);

/** What happens how often in one turn of the crank. */
export const reversalsPerTurn = 2;

export const actings = ['single', 'double'] as const;

export const reciprocatingMachineSheet = {
  throws: countField('Throws of the crankshaft', { symbol: 'n', example: '4' }),
  acting: choiceField(actings, 'Whether gas or liquid is moved by one face of each piston or by both'),
  stroke: optional(quantityField('length', 'Stroke of the piston', { symbol: 's', example: '280 mm' })),
  rodLength: optional(quantityField('length', 'Length of the connecting rod', { symbol: 'l', example: '700 mm' })),
} as const;
export type ReciprocatingMachineSheet = Sheet<typeof reciprocatingMachineSheet>;

/** Crosshead compressor, piston pump or engine running gear, on its crankshaft. */
export const reciprocatingMachine = machineElementKind({
  kind: 'reciprocating-machine',
  name: 'Reciprocating compressor or pump',
  sheet: reciprocatingMachineSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place): readonly ElementLine[] => {
    const throws = answerOf(sheet.values.throws, sheet.of, 'throws');
    const acting = answerOf(sheet.values.acting, sheet.of, 'acting');
    const crank = turning(place.shafts.on);
    return [
      line(
        'rod-load-reversal',
        'Rod load of a throw changes sign twice per turn: knocks of crosshead and pin follow it; where in the turn tells which. Secondary inertia lies here too',
        4,
        { known: true, value: [counted(reversalsPerTurn, crank)] },
      ),
      line(
        'crosshead-impacts',
        'Reversals of all throws, where they are evenly spread over the turn',
        2,
        fromAll({ throws }, (known) => [counted(reversalsPerTurn * known.throws, crank)]),
      ),
      line(
        'pulsation',
        'Delivery of all faces of the pistons, where they are evenly spread over the turn: gas pulses, valve events',
        4,
        fromAll({ throws, acting }, (known) => [counted(known.throws * facesOf(known.acting), crank)]),
      ),
    ];
  },
  doubts: () => [],
  sources,
});

/** Working faces of one piston. */
export function facesOf(acting: (typeof actings)[number]): number {
  return acting === 'double' ? 2 : 1;
}
