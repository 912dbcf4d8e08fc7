import { ask, optional, quantityField, textField } from '../../quantity/index.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { resistiveStages } from './resistive-stage.ts';
import { supplyKind } from './supply-kind.ts';

/** Anything else in the line that costs voltage: an indicator, a fuse, a second card. */
export const seriesResistance = supplyKind({
  kind: 'series-resistance',
  name: 'Resistance in the line',
  dataSheet: {
    resistance: quantityField('resistance', 'Resistance it puts in the line', { symbol: 'R_s', example: '250 ohm' }),
    remark: optional(textField('What else a reader should know')),
  },
  sources: [clause(loopPractice)],
  model: (sheet) => {
    const resistance = ask(sheet, ['resistance'], (s) => s.resistance as number);
    return {
      of: sheet.of,
      voltage: undefined,
      resistance,
      stages: (port) => resistiveStages(sheet.of, resistance, port),
    };
  },
});
