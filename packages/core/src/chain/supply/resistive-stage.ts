import { type Answer, answer, fromAll } from '../../quantity/index.ts';
import { complex } from '../../signal/complex.ts';
import type { Port, Stage } from '../stage.ts';
import { seriesImpedance } from '../two-port.ts';

/** A resistance in the line as the signal meets it: in series with a voltage; a current passes it unchanged. */
export function resistiveStages(of: string, resistance: Answer<number>, port: Port): Answer<readonly Stage[]> {
  if (port !== 'voltage') return answer([]);
  return fromAll({ resistance }, ({ resistance: ohms }) => [
    {
      name: 'resistance in the line',
      part: of,
      enters: 'voltage' as const,
      leaves: 'voltage' as const,
      through: () => seriesImpedance(complex(ohms, 0)),
    },
  ]);
}
