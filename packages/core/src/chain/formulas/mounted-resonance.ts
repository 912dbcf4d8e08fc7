import { type Frequency, quantityField, si } from '../../quantity/index.ts';
import { dunkerley } from '../../source/dunkerley.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/**
 * Resonance of a sensor on a compliant mount, in hertz: 1/f_m² = 1/f_s² + (2π)²·m/k, with the resonance on a stud f_s,
 * the stiffness of the mount k and the mass m that moves on it (sensor and mount). A mount without stiffness given is
 * rigid and leaves the resonance as it is. An estimate from below, so pessimistic. Source: Dunkerley, any textbook.
 */
export function mountedResonance(
  studResonance: number,
  mountStiffness: number | undefined,
  movedMass: number,
): Frequency {
  aboveZero({ resonance: studResonance, mountStiffness });
  if (mountStiffness === undefined) return si('frequency', studResonance);
  aboveZero({ movedMass });
  const [k, m] = [mountStiffness, movedMass];
  return si('frequency', 1 / Math.sqrt(studResonance ** -2 + ((2 * Math.PI) ** 2 * m) / k));
}

export const mountedResonanceWorking = working({
  name: 'mounted-resonance',
  title: 'Resonance of a sensor on a compliant mount',
  inputs: {
    resonance: quantityField('frequency', 'Resonance on a stud, from the data sheet', {
      symbol: 'f_s',
      example: '27 kHz',
    }),
    mountStiffness: quantityField('stiffness', 'Stiffness of the mount', { symbol: 'k', example: '4e8 N/m' }),
    movedMass: quantityField('mass', 'Mass that moves on the mount: sensor and mount together', {
      symbol: 'm',
      example: '150 g',
    }),
  },
  outputs: {
    resonance: output(
      quantityField('frequency', 'Resonance of sensor and mount together', { symbol: 'f_m' }),
      'f_m = 1/√(1/f_s^2 + (2π)^2 · m/k)',
    ),
  },
  holds: 'the estimate is never above the true resonance, so pessimistic; it leaves out the surface under the mount',
  sources: [clause(dunkerley)],
  evaluate: ({ resonance, mountStiffness, movedMass }) => ({
    resonance: mountedResonance(resonance, mountStiffness, movedMass),
  }),
  example: { resonance: '27 kHz', 'mount-stiffness': '4e8 N/m', 'moved-mass': '150 g' },
});
