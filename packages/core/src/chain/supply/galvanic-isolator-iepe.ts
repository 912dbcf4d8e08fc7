import {
  type Answer,
  answer,
  answerOf,
  ask,
  choiceField,
  countField,
  curveField,
  optional,
  quantityField,
  type Sheet,
  spanField,
} from '../../quantity/index.ts';
import { complex, product } from '../../signal/complex.ts';
import { lowPass } from '../../signal/filters.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { associatedCertificate } from '../certificate.ts';
import { densityAt } from '../formulas/noise.ts';
import type { Stage } from '../stage.ts';
import { feeds } from '../transducer/transducer-kind.ts';
import { isolatedGain } from '../two-port.ts';
import { isolatorSheet, whereStated } from './isolator-sheet.ts';
import { supplyKind } from './supply-kind.ts';

const dataSheet = {
  fieldVoltage: quantityField('voltage', 'Voltage it holds at its field terminals while it feeds', {
    symbol: 'V_f',
    example: '22 V',
  }),
  fieldCurrent: quantityField('current', 'Constant current it feeds the transducer', {
    symbol: 'I_f',
    example: '3.6 mA',
  }),
  bandwidth: quantityField('frequency', 'Upper corner, −3 dB', { symbol: 'f_h', example: '20 kHz' }),
  bandwidthOrder: countField('Order of that corner', { example: '1' }),
  noise: curveField('voltage density', 'Noise at its output'),
  signalPeak: optional(
    quantityField('voltage', 'Largest signal it passes, either way, at its field terminals', { example: '9 V' }),
  ),
  gain: quantityField('ratio', 'Output over input, well inside its band', { symbol: 'G', example: '1' }),
  restVoltage: optional(
    spanField('voltage', 'Direct voltage at its output while nothing moves', { example: '11..13 V' }),
  ),
  cardSide: choiceField(feeds, 'As what it stands before the input', { example: 'constant-current' }),
  ...isolatorSheet,
} as const;

function isolatorStage(sheet: Sheet<typeof dataSheet>): Answer<readonly Stage[]> {
  return ask(sheet, ['gain', 'bandwidth', 'bandwidthOrder', 'noise'], (s) => [
    {
      name: 'isolator',
      part: sheet.of,
      enters: 'voltage',
      leaves: 'voltage',
      through: (frequency) =>
        isolatedGain(product(complex(s.gain, 0), lowPass(frequency, s.bandwidth, s.bandwidthOrder))),
      noise: answer((frequency: number) => densityAt(s.noise, frequency)),
    },
  ]);
}

/**
 * Feeds the transducer out of its own source and hands the signal on without a common wire: the bias window and the
 * drive of the field cable are its own, what lies behind it no longer counts there.
 */
export const galvanicIsolatorIepe = supplyKind({
  kind: 'galvanic-isolator-iepe',
  name: 'Galvanic isolator for constant-current (IEPE) transducers',
  dataSheet,
  sources: [clause(barrierPractice)],
  model: (sheet) => ({
    of: sheet.of,
    voltage: undefined,
    resistance: undefined,
    stages: (port) => (port === 'voltage' ? isolatorStage(sheet) : answer([])),
    isolation: {
      takes: ['constant-current'],
      gives: ask(sheet, ['cardSide'], (s) => s.cardSide),
      constantCurrent: {
        compliance: ask(sheet, ['fieldVoltage'], (s) => s.fieldVoltage as number),
        highest: ask(sheet, ['fieldVoltage'], (s) => s.fieldVoltage as number),
        current: ask(sheet, ['fieldCurrent'], (s) => s.fieldCurrent as number),
        drop: answer(0),
      },
      gain: ask(sheet, ['gain'], (s) => s.gain as number),
      gainTolerance: whereStated(sheet.values.gainTolerance, sheet.of, 'gain tolerance'),
      restVoltage: whereStated(sheet.values.restVoltage, sheet.of, 'rest voltage'),
      peakVoltage: whereStated<number>(sheet.values.signalPeak, sheet.of, 'signal peak'),
    },
    ownSupply: answerOf(sheet.values.ownSupply, sheet.of, 'own supply'),
    associated: associatedCertificate(sheet as Sheet),
  }),
});
