import { answerOf, countField, type Sheet } from '../quantity/index.ts';
import { machineElementKind } from './element.ts';
import { toothedLoopPossible } from './rules/toothed-loop-possible.ts';
import { type LoopWords, loopLines, loopRelations, loopSources } from './toothed-loop.ts';

export const timingBeltSheet = {
  drivingTeeth: countField('Teeth of the driving pulley, on the shaft `from`', {
    symbol: 'z_1',
    least: 2,
    example: '32',
  }),
  drivenTeeth: countField('Teeth of the driven pulley, on the shaft `to`', { symbol: 'z_2', least: 2, example: '64' }),
  beltTeeth: countField('Teeth of the belt', { symbol: 'z_L', least: 2, example: '150' }),
} as const;
export type TimingBeltSheet = Sheet<typeof timingBeltSheet>;

const words: LoopWords = {
  loop: 'belt',
  wheel: 'pulley',
  mesh: 'Teeth of the belt running on: teeth times speed',
};

/** Two toothed pulleys and a belt that does not slip. */
export const timingBelt = machineElementKind({
  kind: 'timing-belt',
  name: 'Timing belt',
  sheet: timingBeltSheet,
  places: ['from', 'to'],
  relations: (sheet) => loopRelations(sheet, words),
  lines: (sheet, place) => loopLines(sheet, answerOf(sheet.values.beltTeeth, sheet.of, 'belt teeth'), place, words),
  doubts: (sheet) => toothedLoopPossible.check(sheet, sheet.values.beltTeeth, 'belt teeth'),
  sources: loopSources,
});
