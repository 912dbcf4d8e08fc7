import { answerOf, ask, optional, quantityField, type Sheet, textField } from '../../quantity/index.ts';
import { barrierPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { associatedCertificate, associatedCertificateSheet } from '../certificate.ts';
import { resistiveStages } from './resistive-stage.ts';
import { supplyKind } from './supply-kind.ts';

/**
 * A passive barrier: resistance along the line, diodes to an earth of its own. It costs I·R of the supply; above its
 * working voltage the diodes draw current, which shifts the bias and in the end blows its fuse.
 */
export const shuntDiodeBarrier = supplyKind({
  kind: 'shunt-diode-barrier',
  name: 'Shunt-diode barrier',
  dataSheet: {
    resistance: quantityField('resistance', 'End-to-end resistance, at its highest', {
      symbol: 'R_b',
      example: '340 ohm',
    }),
    usualResistance: optional(
      quantityField('resistance', 'End-to-end resistance of the usual piece', { example: '320 ohm' }),
    ),
    supplyResistance: optional(
      quantityField('resistance', 'End-to-end resistance of the channel a supply core passes through', {
        example: '64 ohm',
      }),
    ),
    workingVoltage: quantityField('voltage', 'Highest voltage it carries without leakage that counts', {
      symbol: 'V_w',
      example: '26 V',
    }),
    ...associatedCertificateSheet,
    remark: optional(textField('What else a reader should know')),
  },
  sources: [clause(barrierPractice)],
  model: (sheet) => {
    const resistance = ask(sheet, ['resistance'], (s) => s.resistance as number);
    const { usualResistance } = sheet.values;
    return {
      of: sheet.of,
      voltage: undefined,
      resistance,
      ...(usualResistance === undefined
        ? {}
        : { usualResistance: answerOf<number>(usualResistance, sheet.of, 'usual resistance') }),
      supplyResistance: answerOf<number>(sheet.values.supplyResistance, sheet.of, 'supply resistance'),
      stages: (port) => resistiveStages(sheet.of, resistance, port),
      earthed: { workingVoltage: ask(sheet, ['workingVoltage'], (s) => s.workingVoltage as number) },
      associated: associatedCertificate(sheet as Sheet),
    };
  },
});
