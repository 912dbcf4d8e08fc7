import { answer, answerOf, countField, type Sheet } from '../quantity/index.ts';
import { inductionMotorPractice } from '../source/induction-motor-practice.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, machineElementKind } from './element.ts';
import { motorSupplySheet, pairsOf, supplyLines } from './motor-supply.ts';
import { synchronousSpeedAgainstPoles } from './rules/synchronous-speed-against-poles.ts';

const sources = [clause(inductionMotorPractice, 'synchronous speed')];

export const synchronousMotorSheet = {
  poles: countField('Poles', { symbol: 'p', least: 2, example: '12' }),
  ...motorSupplySheet,
} as const;
export type SynchronousMotorSheet = Sheet<typeof synchronousMotorSheet>;

/** A motor or generator whose shaft keeps step with the line: order p of the shaft is twice line frequency, exactly. */
export const synchronousMotor = machineElementKind({
  kind: 'synchronous-motor',
  name: 'Synchronous motor or generator',
  sheet: synchronousMotorSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place) => supplyLines(sheet, place.element),
  doubts: (sheet, speeds) => synchronousSpeedAgainstPoles.check(sheet, speeds),
  drive: {
    on: 'on',
    polePairs: (sheet) => pairsOf(answerOf(sheet.values.poles, sheet.of, 'poles'), sheet.of),
    mains: () => answer(undefined),
  },
  sources,
});
