import type { MeasuringChain } from '../chain/chain.ts';
import { terminalVoltages } from '../chain/terminal-voltages.ts';
import { type Answer, fromAll, unanswered } from '../quantity/index.ts';

/**
 * Direct voltage across the pair at the input, machine at rest: the middle of what the design expects there, moved by as
 * much as the bias of this piece lies off the middle of its data sheet.
 */
export function restVoltage(chain: MeasuringChain, bias: number | undefined): Answer<number> {
  const atInput = terminalVoltages(chain).findLast((each) => each.state === 'at rest');
  if (atInput === undefined) return unanswered([{ of: chain.of, what: 'direct voltage' }]);
  const { biased } = chain.transducer;
  if (bias === undefined || biased === undefined) return middle(atInput.voltage);
  return fromAll({ rest: middle(atInput.voltage), own: middle(biased.bias) }, ({ rest, own }) => rest + bias - own);
}

function middle(span: Answer<{ readonly low: number; readonly high: number }>): Answer<number> {
  return fromAll({ span }, ({ span: { low, high } }) => (low + high) / 2);
}
