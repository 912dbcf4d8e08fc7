import { isolatedGain, openTransfer, type TwoPort } from '../../chain/two-port.ts';
import { complex, reciprocal } from '../../signal/complex.ts';
import { defectKind } from './defect-kind.ts';

/** Grease, glue or paint under the foot: the resonance rings less. */
export const damping = defectKind({
  kind: 'damping',
  name: 'Another height of the resonance',
  sized: 'quality over the designed',
  quantity: 'ratio',
  usual: 0.25,
  change: (size) => ({
    stages: (stages) =>
      stages.map((stage) =>
        stage.enters === 'motion' && stage.leaves === 'motion'
          ? { ...stage, through: (frequency: number) => damped(stage.through(frequency), size) }
          : stage,
      ),
  }),
});

/** 1/H of a resonator is 1 − r² + j·r/Q: only its imaginary part tells the quality. */
function damped(port: TwoPort, quality: number): TwoPort {
  const inverse = reciprocal(openTransfer(port));
  return isolatedGain(reciprocal(complex(inverse.re, inverse.im / quality)));
}
