import { cableRuns, type MeasuringChain, type Showing, showQuantity } from '@soundpost/core';
import { answerText } from './cells.ts';

/**
 * Each length of cable with what it leads to, from the transducer to the input; undefined where there is one length, for
 * the chain is then called by all that stands in it.
 */
export function lineOfCable(chain: MeasuringChain, showing: Showing): string | undefined {
  const runs = cableRuns(chain);
  if (runs.length < 2) return undefined;
  return runs
    .map(({ length, cable, to }) => {
      const long = answerText(length, (value) => showQuantity('length', value, showing));
      return `${long} ${cable.name} to ${to ?? 'an end that is not known'}`;
    })
    .join('; ');
}
