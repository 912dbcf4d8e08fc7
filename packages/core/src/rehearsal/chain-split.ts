import type { MeasuringChain } from '../chain/chain.ts';
import { rowOfTwoPorts, type Stage, transfer } from '../chain/stage.ts';
import { outputImpedance } from '../chain/two-port.ts';
import { type Complex, magnitude } from '../signal/complex.ts';

/** The row of a chain, cut where something in it is not linear. Neither side of a cut is loaded by what follows it. */
export interface SplitChain {
  /** From the surface to the element: where mechanical limits bite. */
  readonly toElement: readonly Stage[];
  /** From the element to the source inside the electronics: where swing and slew bite. */
  readonly toSource: readonly Stage[];
  /** From there to the converter, or to the input terminal where the direct voltage is looked at. */
  readonly toRecord: readonly Stage[];
}

export function splitChain(chain: MeasuringChain, stages: readonly Stage[], direct: boolean): SplitChain {
  const ofTransducer = chain.transducer.stages.known ? chain.transducer.stages.value.length : 0;
  const first = stages[0]?.enters === 'motion' && stages[0]?.leaves === 'motion' ? 1 : 0;
  const source = lastIdealSource(stages.slice(0, ofTransducer));
  const rest = stages.slice(source);
  return {
    toElement: stages.slice(0, first),
    toSource: stages.slice(first, source),
    toRecord: direct ? rest.filter((stage) => stage.blocksDirect !== true) : rest,
  };
}

/** A frequency at which the output impedance of stages is looked at: none of them has one here and not elsewhere. */
const looked = 1000;

/** How many stages lie before the last joint that nothing behind it can load: where the output impedance is nothing. */
function lastIdealSource(stages: readonly Stage[]): number {
  for (let count = stages.length; count > 0; count--) {
    const behind = outputImpedance(rowOfTwoPorts(stages.slice(0, count), looked));
    if (magnitude(behind) === 0 && stages[count - 1]!.leaves !== 'motion') return count;
  }
  return stages.length;
}

/** From the start of a row to its open end; 1 where there is no stage. */
export function rowTransfer(stages: readonly Stage[]): (frequency: number) => Complex {
  return (frequency) => transfer(stages, frequency);
}
