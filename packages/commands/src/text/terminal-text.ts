import { type MeasuringChain, showSpan, terminalVoltages } from '@soundpost/core';
import { type Line, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { answerText } from './values-text.ts';

/** The direct voltage a hand meter should find at every terminal, over the tolerance of the bias. */
export function terminalLines(chain: MeasuringChain, { width, showing }: Manner): readonly Line[] {
  const rows = terminalVoltages(chain).map((each) => [
    each.terminal,
    each.state,
    answerText(each.voltage, (span) => showSpan('voltage', span, showing)),
  ]);
  if (rows.length === 0) return [];
  return plainLines(
    table([{ head: 'terminal' }, { head: 'state' }, { head: 'expected on a meter' }], rows, width, '  '),
  );
}
