import { optional, type Sheet, textField } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { apparatusCertificate, apparatusCertificateSheet } from '../certificate.ts';
import { supplyKind } from './supply-kind.ts';

/** Terminals in a box: it joins two lengths of cable, and does nothing else to the signal. */
export const junctionBox = supplyKind({
  kind: 'junction-box',
  name: 'Junction box',
  dataSheet: {
    terminals: optional(textField('Which terminals, and where the screen goes', { example: '3 and 4, screen on 5' })),
    sealing: optional(textField('Sealing as offered', { example: 'IP66' })),
    ...apparatusCertificateSheet,
    remark: optional(textField('What else a reader should know')),
  },
  sources: [clause(tradePractice)],
  model: (sheet) => ({
    of: sheet.of,
    voltage: undefined,
    resistance: undefined,
    apparatus: apparatusCertificate(sheet as Sheet),
    joins: true,
  }),
});
