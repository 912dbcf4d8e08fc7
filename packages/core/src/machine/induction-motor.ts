import {
  type Answer,
  answerOf,
  choiceField,
  countField,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { inductionMotorPractice } from '../source/induction-motor-practice.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, type ElementLine, type MotorDrive, machineElementKind, present } from './element.ts';
import { counted, type FrequencyTerm, lineFrequencyOf, slipFrequencyOf, turning } from './form.ts';
import { synchronousSpeed } from './motor-frequencies.ts';
import { mainsFrequency, motorSupplySheet, pairsOf, supplyLines } from './motor-supply.ts';
import { polesAgainstSpeed } from './rules/poles-against-speed.ts';
import { ratedSlipAgainstSpeed } from './rules/rated-slip-against-speed.ts';
import { slipAboveZero } from './rules/slip-above-zero.ts';
import { frequencyAtSpeed, type RatedSlip, slipAtFrequency, type TorqueLaw, torqueLaws } from './slip-law.ts';

export const inductionMotorSheet = {
  poles: countField('Poles, not pole pairs', { symbol: 'p', least: 2, example: '4' }),
  ...motorSupplySheet,
  ratedSpeed: optional(quantityField('shaft speed', 'Speed on the name plate', { example: '1486 r/min' })),
  ratedSlip: optional(quantityField('shaft speed', 'Slip at rated load, as a speed', { example: '14 r/min' })),
  torqueLaw: optional(choiceField(torqueLaws, 'How torque follows line frequency, for the slip at part speed')),
  rotorBars: optional(countField('Bars of the cage rotor', { symbol: 'R', example: '40' })),
} as const;
export type InductionMotorSheet = Sheet<typeof inductionMotorSheet>;

const sources = [clause(inductionMotorPractice)];

/** Slip at rated load: as stated, or synchronous less rated speed. */
export function ratedSlipOf(sheet: InductionMotorSheet): Answer<RatedSlip> {
  const lineFrequency = answerOf(sheet.values.lineFrequency, sheet.of, 'line frequency');
  const stated = valueIfStated(sheet.values.ratedSlip);
  if (stated !== undefined) return fromAll({ lineFrequency }, (known) => ({ slip: stated, ...known }));
  const ratedSpeed = valueIfStated(sheet.values.ratedSpeed);
  if (ratedSpeed === undefined) return unanswered([{ of: sheet.of, what: 'rated speed or rated slip' }]);
  const poles = answerOf(sheet.values.poles, sheet.of, 'poles');
  return fromAll({ lineFrequency, poles }, (known) => ({
    slip: synchronousSpeed(known.lineFrequency, known.poles) - ratedSpeed,
    lineFrequency: known.lineFrequency,
  }));
}

function lawOf(sheet: InductionMotorSheet): TorqueLaw {
  return valueIfStated(sheet.values.torqueLaw) ?? 'unknown';
}

const drive: MotorDrive<typeof inductionMotorSheet, 'on'> = {
  on: 'on',
  polePairs: (sheet) => pairsOf(answerOf(sheet.values.poles, sheet.of, 'poles'), sheet.of),
  mains: mainsFrequency,
  slip: {
    slipAt: (sheet, lineFrequency) => {
      const rated = ratedSlipOf(sheet);
      return rated.known ? slipAtFrequency(rated.value, lawOf(sheet), lineFrequency, sheet.of) : { value: rated };
    },
    lineFrequencyAt: (sheet, speed) => {
      const pairs = drive.polePairs(sheet);
      const rated = ratedSlipOf(sheet);
      if (!rated.known) return rated;
      return pairs.known ? frequencyAtSpeed(rated.value, lawOf(sheet), pairs.value, speed, sheet.of) : pairs;
    },
  },
};

/** Cage induction motor, on the mains or behind a converter. */
export const inductionMotor = machineElementKind({
  kind: 'induction-motor',
  name: 'Cage induction motor',
  sheet: inductionMotorSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place) => [
    ...supplyLines(sheet, place.element),
    ...slipLines(sheet, place.element, place.shafts.on),
    ...barLines(sheet, place.element, place.shafts.on),
  ],
  doubts: (sheet, speeds) => [
    ...slipAboveZero.check(sheet, speeds),
    ...polesAgainstSpeed.check(sheet, speeds),
    ...ratedSlipAgainstSpeed.check(sheet, speeds),
  ],
  drive,
  sources,
});

function slipLines(sheet: InductionMotorSheet, motor: string, shaft: string): readonly ElementLine[] {
  const poles = answerOf(sheet.values.poles, sheet.of, 'poles');
  const line = (name: string, meaning: string, terms: (p: number) => readonly FrequencyTerm[]): ElementLine => ({
    name,
    meaning,
    form: fromAll({ poles }, (known) => terms(known.poles)),
    sources: [clause(inductionMotorPractice, 'pole pass')],
  });
  const polePass = (p: number, sign = 1) => counted(sign * p, slipFrequencyOf(motor));
  return [
    line('pole-pass', 'Pole pass: poles times slip frequency, which is also twice line frequency times slip', (p) => [
      polePass(p),
    ]),
    line('broken-bar-lower', 'Once per turn less pole pass: broken or loose rotor bars', (p) => [
      counted(1, turning(shaft)),
      polePass(p, -1),
    ]),
    line('broken-bar-upper', 'Once per turn plus pole pass: broken or loose rotor bars', (p) => [
      counted(1, turning(shaft)),
      polePass(p),
    ]),
  ];
}

function barLines(sheet: InductionMotorSheet, motor: string, shaft: string): readonly ElementLine[] {
  const bars = present(sheet, 'rotorBars');
  if (bars === undefined) return [];
  const count = answerOf(bars, sheet.of, 'rotor bars');
  const sides: readonly (readonly [string, string, number])[] = [
    ['rotor-bar-pass', 'Rotor-bar pass: bars times speed', 0],
    ['rotor-bar-pass-lower', 'Rotor-bar pass less twice line frequency', -2],
    ['rotor-bar-pass-upper', 'Rotor-bar pass plus twice line frequency', 2],
  ];
  return sides.map(([name, meaning, side]) => ({
    name,
    meaning,
    form: fromAll({ count }, (known) => [
      counted(known.count, turning(shaft)),
      ...(side === 0 ? [] : [counted(side, lineFrequencyOf(motor))]),
    ]),
    harmonics: side === 0 ? 2 : 1,
    sources: [clause(inductionMotorPractice, 'rotor-bar pass', 'from memory')],
  }));
}
