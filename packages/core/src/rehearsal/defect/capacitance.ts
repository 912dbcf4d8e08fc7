import { shuntAdmittance } from '../../chain/two-port.ts';
import { complex } from '../../signal/complex.ts';
import { defectKind } from './defect-kind.ts';

/** More cable lies between transducer and input: it loads the output, and takes its share of the current that drives it. */
export const capacitance = defectKind({
  kind: 'capacitance',
  name: 'More cable than designed',
  sized: 'capacitance added at the output of the transducer',
  quantity: 'capacitance',
  usual: 1e-8,
  change: (size) => ({
    moreCapacitance: size,
    stages: (stages) => {
      const place = stages.findIndex((stage) => stage.enters === 'voltage' && stage.leaves === 'voltage') + 1;
      return stages.toSpliced(Math.max(1, place), 0, {
        name: 'more cable',
        part: 'cable',
        enters: 'voltage',
        leaves: 'voltage',
        through: (frequency) => shuntAdmittance(complex(0, 2 * Math.PI * frequency * size)),
      });
    },
  }),
});
