import { answerOf, countField, type Sheet } from '../quantity/index.ts';
import { machineElementKind } from './element.ts';
import { toothedLoopPossible } from './rules/toothed-loop-possible.ts';
import { type LoopWords, loopLines, loopRelations, loopSources } from './toothed-loop.ts';

export const chainDriveSheet = {
  drivingTeeth: countField('Teeth of the driving sprocket, on the shaft `from`', {
    symbol: 'z_1',
    least: 2,
    example: '19',
  }),
  drivenTeeth: countField('Teeth of the driven sprocket, on the shaft `to`', {
    symbol: 'z_2',
    least: 2,
    example: '57',
  }),
  links: countField('Links of the chain, counted by pitches', { symbol: 'z_L', least: 2, example: '120' }),
} as const;
export type ChainDriveSheet = Sheet<typeof chainDriveSheet>;

const words: LoopWords = {
  loop: 'chain',
  wheel: 'sprocket',
  mesh: 'Links running on: teeth times speed, also where the chain runs as a polygon',
};

/** Two sprockets and a chain. */
export const chainDrive = machineElementKind({
  kind: 'chain-drive',
  name: 'Chain drive',
  sheet: chainDriveSheet,
  places: ['from', 'to'],
  relations: (sheet) => loopRelations(sheet, words),
  lines: (sheet, place) => loopLines(sheet, answerOf(sheet.values.links, sheet.of, 'links'), place, words),
  doubts: (sheet) => toothedLoopPossible.check(sheet, sheet.values.links, 'links'),
  sources: loopSources,
});
