import type { Stage } from '../../chain/stage.ts';
import { isolatedGain } from '../../chain/two-port.ts';
import type { Complex } from '../../signal/complex.ts';

/** The row with one more stage before its last, that neither loads nor is loaded. */
export function withStage(
  stages: readonly Stage[],
  name: string,
  gain: (frequency: number) => Complex,
): readonly Stage[] {
  const last = stages.at(-1);
  if (last === undefined) return stages;
  const port = last.enters;
  return stages.toSpliced(-1, 0, {
    name,
    part: last.part,
    enters: port,
    leaves: port,
    through: (frequency) => isolatedGain(gain(frequency)),
  });
}
