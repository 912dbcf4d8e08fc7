import {
  answer,
  answerOf,
  ask,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  spanField,
} from '../../quantity/index.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { associatedCertificate } from '../certificate.ts';
import { isolatorSheet, whereStated } from './isolator-sheet.ts';
import { supplyKind } from './supply-kind.ts';

/** Full scale of a loop: the current at which such a part states its field voltage. */
const fullScale = 0.02;

/**
 * Feeds a two-wire sensor in the field and repeats its current on the card side, where the card no longer costs the
 * field voltage. Seen from the field it is a source with a resistance: V = V₂₀ + (20 mA − I)·R_s; where no R_s is stated
 * its voltage is taken not to fall any further above 20 mA.
 */
export const galvanicIsolatorLoop = supplyKind({
  kind: 'galvanic-isolator-loop',
  name: 'Galvanic isolator with supply for 4–20 mA loops',
  dataSheet: {
    fieldVoltage: spanField('voltage', 'Lowest to highest voltage at its field terminals at 20 mA', {
      symbol: 'V_20',
      example: '15.5 V',
    }),
    sourceResistance: optional(
      quantityField('resistance', 'How much that voltage falls with the current', { symbol: 'R_s', example: '50 ohm' }),
    ),
    ...isolatorSheet,
  },
  sources: [clause(barrierPractice)],
  model: (sheet) => {
    const { sourceResistance } = sheet.values;
    const stated = whereStated<number>(sourceResistance, sheet.of, 'source resistance');
    return {
      of: sheet.of,
      voltage: fromAll(
        { at: ask(sheet, ['fieldVoltage'], (s) => s.fieldVoltage), resistance: stated ?? answer(0) },
        ({ at, resistance }) => ({
          low: (at.low + fullScale * resistance) as typeof at.low,
          high: (at.high + fullScale * resistance) as typeof at.high,
        }),
      ),
      resistance: stated,
      isolation: {
        takes: ['current-loop'],
        gives: answer('current-loop'),
        gain: answer(1),
        gainTolerance: whereStated(sheet.values.gainTolerance, sheet.of, 'gain tolerance'),
        restVoltage: undefined,
        peakVoltage: undefined,
      },
      ownSupply: answerOf(sheet.values.ownSupply, sheet.of, 'own supply'),
      associated: associatedCertificate(sheet as Sheet),
    };
  },
});
