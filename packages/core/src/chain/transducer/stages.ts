import { complex } from '../../signal/complex.ts';
import { resonance } from '../../signal/filters.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain, seriesImpedance } from '../two-port.ts';

/** The motion of the element over that of the surface: one degree of freedom, as high at its resonance as stated. */
export function mountedResonanceStage(part: string, natural: number, quality: number): Stage {
  return {
    name: 'mounted resonance',
    part,
    enters: 'motion',
    leaves: 'motion',
    features: [natural],
    through: (frequency) => isolatedGain(resonance(frequency, natural, quality)),
  };
}

/** What the electronics put between their voltage and the cable, in ohms. */
export function outputResistanceStage(part: string, resistance: number): Stage {
  return {
    name: 'output resistance',
    part,
    enters: 'voltage',
    leaves: 'voltage',
    through: () => seriesImpedance(complex(resistance, 0)),
  };
}
