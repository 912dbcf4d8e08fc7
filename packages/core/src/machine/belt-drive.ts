import {
  type Answer,
  answer,
  ask,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  spanField,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { beltPractice } from '../source/belt-practice.ts';
import { clause } from '../source/source.ts';
import { beltTurns, usualBeltSlip } from './belt-frequencies.ts';
import { type ElementLine, machineElementKind, present } from './element.ts';
import { measuredTimes, turning } from './form.ts';
import { fallingBehind, rimRelations, rimsOf } from './rim-drive.ts';
import { beltLengthPossible } from './rules/belt-length-possible.ts';
import { beltRatioAgainstDiameters } from './rules/belt-ratio-against-diameters.ts';
import { beltSlipNotStated } from './rules/belt-slip-not-stated.ts';

const sources = [clause(beltPractice)];

export const beltDriveSheet = {
  drivingDiameter: quantityField('length', 'Pitch diameter of the driving pulley', {
    symbol: 'D_1',
    example: '180 mm',
  }),
  drivenDiameter: quantityField('length', 'Pitch diameter of the driven pulley', { symbol: 'D_2', example: '355 mm' }),
  beltLength: quantityField('length', 'Pitch length of the belt', { symbol: 'L', example: '2.5 m' }),
  slip: optional(
    spanField('fraction', 'Slip of the belt: how far the driven pulley falls behind', { example: '0.5..1 %' }),
  ),
  ratio: optional(
    quantityField('ratio', 'Ratio as stated elsewhere, speed of the driving over speed of the driven', {
      example: '1.97',
    }),
  ),
} as const;
export type BeltDriveSheet = Sheet<typeof beltDriveSheet>;

/**
 * Two pulleys and a friction belt: D_1·n_1·(1 − s) = D_2·n_2, and f_belt = π·D_1·n_1/L. The exact ratio is that of no
 * slip, or of the middle of a stated slip; both ends of the slip are carried beside it.
 */
export const beltDrive = machineElementKind({
  kind: 'belt-drive',
  name: 'Belt drive',
  sheet: beltDriveSheet,
  places: ['from', 'to'],
  relations: (sheet) =>
    rimRelations(
      'a belt joins the rims of two pulleys',
      rimsOf(sheet, 'pulley'),
      fallingBehind(present(sheet, 'slip'), sheet.of, 'slip', usualBeltSlip),
      'the same way',
    ),
  lines: (sheet, place): readonly ElementLine[] => [
    {
      name: 'belt-pass',
      meaning: 'One turn of the belt: a joint, a bad place in it; its second multiple is commonly the stronger',
      form: fromAll({ pulleys: rimsOf(sheet, 'pulley'), length: lengthOf(sheet) }, ({ pulleys, length }) => [
        measuredTimes(beltTurns(pulleys.driving, length), turning(place.shafts.from)),
      ]),
      slip: { low: -(slipSpan(sheet)?.high ?? usualBeltSlip.high), high: 0 },
      harmonics: 4,
      sources,
    },
  ],
  doubts: (sheet, speeds) => [
    ...beltRatioAgainstDiameters.check(sheet, speeds),
    ...beltLengthPossible.check(sheet, speeds),
    ...beltSlipNotStated.check(sheet, speeds),
  ],
  sources,
});

function lengthOf(sheet: BeltDriveSheet): Answer<number> {
  return thenAnswer(
    ask(sheet, ['beltLength'], ({ beltLength }) => beltLength as number),
    (length) => (length > 0 ? answer(length) : unanswered([{ of: sheet.of, what: 'a belt length above zero' }])),
  );
}

function slipSpan(sheet: BeltDriveSheet): { readonly low: number; readonly high: number } | undefined {
  const own = present(sheet, 'slip');
  return own?.known === true ? own.value : undefined;
}
