import { answer, choiceField, levelField, optional, type Sheet } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { couplesNothing, type ElementLine, machineElementKind } from './element.ts';
import { counted, turning } from './form.ts';
import { throwPlausible } from './rules/throw-plausible.ts';

const sources = [clause(tradePractice, 'exciters of vibrating screens and feeders')];

export const screenExciterSheet = {
  stroke: levelField(['displacement'], 'Motion of the body at duty', { symbol: 's', example: '9 mm pp' }),
  path: optional(choiceField(['circular', 'elliptical', 'straight'], 'Shape of that motion')),
} as const;
export type ScreenExciterSheet = Sheet<typeof screenExciterSheet>;

/**
 * Unbalance shaft of a vibrating screen, feeder or conveyor. Its force turns with the shaft, so in its bearings the
 * inner ring has one loaded spot and the outer ring is loaded all round: the reverse of a pump.
 */
export const screenExciter = machineElementKind({
  kind: 'screen-exciter',
  name: 'Exciter of a vibrating screen',
  sheet: screenExciterSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (_sheet, place): readonly ElementLine[] => [
    {
      name: 'stroke',
      meaning: 'The motion the machine works by; side lines of an outer-ring fault, none of an inner-ring fault',
      form: answer([counted(1, turning(place.shafts.on))]),
      sources,
    },
    {
      name: 'looseness',
      meaning: 'Three times the stroke: loose side plates, broken springs, worn guides',
      form: answer([counted(3, turning(place.shafts.on))]),
      sources,
    },
  ],
  doubts: (sheet, speeds) => throwPlausible.check(sheet, speeds),
  shakesByDesign: true,
  sources,
});
