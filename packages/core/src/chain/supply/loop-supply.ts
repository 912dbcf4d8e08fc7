import { ask, optional, spanField, textField } from '../../quantity/index.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { supplyKind } from './supply-kind.ts';

/** The direct voltage that drives a current loop, over its tolerance. */
export const loopSupply = supplyKind({
  kind: 'loop-supply',
  name: 'Loop supply',
  dataSheet: {
    voltage: spanField('voltage', 'Lowest to highest voltage it gives', { symbol: 'V_s', example: '21.6..26.4 V' }),
    remark: optional(textField('What else a reader should know')),
  },
  sources: [clause(loopPractice)],
  model: (sheet) => ({ of: sheet.of, voltage: ask(sheet, ['voltage'], (s) => s.voltage), resistance: undefined }),
});
