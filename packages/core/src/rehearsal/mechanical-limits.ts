import type { MeasuringChain } from '../chain/chain.ts';
import type { Stage } from '../chain/stage.ts';
import { type Motion, motionOrder } from '../quantity/index.ts';
import type { SplitChain } from './chain-split.ts';
import { sensed } from './differentiation.ts';
import type { SpectralFilter } from './spectral.ts';

interface Limited {
  readonly samples: Float64Array;
  /** The motion these samples are. */
  readonly motion: Motion;
  /** Samples beyond a limit. */
  readonly beyond: number;
  /** The stages that have not been passed yet. */
  rest(row: SplitChain): readonly Stage[];
  readonly notes: readonly string[];
}

/**
 * The motion kept within what the transducer can follow before its electronics: gap of a probe, travel of a coil,
 * acceleration before an integrator. It stops at the limit; what a real one does beyond it no data sheet tells. The rated
 * range of constant-current electronics is not among them: their swing stops them.
 */
export function withinMechanicalLimits(
  samples: Float64Array,
  motion: Motion,
  { transducer }: MeasuringChain,
  filter: SpectralFilter,
  toElement: readonly Stage[],
): Limited {
  const whole: Limited = { samples, motion, beyond: 0, rest: (row) => [...row.toElement, ...row.toSource], notes: [] };
  const limits = transducer.ceilings
    .flatMap((each) => (each.known ? [each.value] : []))
    .filter((each) => transducer.biased === undefined || each.motion !== transducer.senses);
  const [limit] = [...limits].sort((a, b) => motionOrder[b.motion] - motionOrder[a.motion]);
  if (limit === undefined) return whole;
  const how = motionOrder[limit.motion] < motionOrder[motion] ? 'integrating' : 'through';
  const there = filter[how](samples, sensed(motion, limit.motion, toElement), limit.motion === motion ? 1 : 0);
  let beyond = 0;
  for (let index = 0; index < there.length; index++) {
    if (Math.abs(there[index]!) <= limit.peak) continue;
    there[index] = Math.sign(there[index]!) * limit.peak;
    beyond += 1;
  }
  if (beyond === 0) return whole;
  return {
    samples: there,
    motion: limit.motion,
    beyond,
    rest: (row) => row.toSource,
    notes: [`Beyond '${limit.name}' the transducer stops at its limit.`],
  };
}
