import { defectKind } from './defect-kind.ts';
import { rattle } from './rattle.ts';

/** The resonance comes down and the foot rattles once per turn. */
export const looseMount = defectKind({
  kind: 'loose-mount',
  name: 'Loose mount',
  sized: 'mounted resonance over the designed',
  quantity: 'ratio',
  usual: 0.3,
  change: (size) => ({
    stages: (stages) =>
      stages.map((stage) =>
        stage.enters === 'motion' && stage.leaves === 'motion'
          ? {
              ...stage,
              features: (stage.features ?? []).map((each) => each * size),
              through: (frequency: number) => stage.through(frequency / size),
            }
          : stage,
      ),
    atSurface: (samples, context) => rattle(samples, context),
  }),
});
