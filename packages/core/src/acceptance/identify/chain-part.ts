import type { Stage } from '../../chain/stage.ts';
import type { DesignedPoint } from '../../design/design.ts';
import { chainOf, predictionOf } from '../expected.ts';

/** The part that the first stage of a sort belongs to; the chain where there is none. */
export function partWith(designed: DesignedPoint, fits: (stage: Stage) => boolean): string {
  const chain = chainOf(designed);
  const stage = chain?.stages.known ? chain.stages.value.find(fits) : undefined;
  return stage?.part ?? chain?.of ?? designed.point.of;
}

/** The part that the transducer's own stages belong to. */
export function transducerPart(designed: DesignedPoint): string {
  return partWith(designed, (stage) => stage.enters !== 'motion' || stage.leaves !== 'motion');
}

/** The part that stands last: the input. */
export function inputPart(designed: DesignedPoint): string {
  const chain = chainOf(designed);
  return (chain?.stages.known ? chain.stages.value.at(-1)?.part : undefined) ?? chain?.of ?? designed.point.of;
}

/** The mount the transducer stands on, which decides its resonance together with it. */
export function mountPart(designed: DesignedPoint): string {
  const mount = chainOf(designed)?.parts.mount;
  return mount === undefined ? designed.point.of : `mount ${mount.name}`;
}

/** The part whose share in the predicted noise is the largest at a frequency. */
export function noisiestPart(designed: DesignedPoint, frequency: number): string {
  const shares = predictionOf(designed)?.noiseOf;
  if (shares?.known !== true) return designed.point.of;
  const [first, ...others] = shares.value;
  if (first === undefined) return designed.point.of;
  return others.reduce((most, each) => (each.density(frequency) > most.density(frequency) ? each : most), first).stage
    .part;
}
