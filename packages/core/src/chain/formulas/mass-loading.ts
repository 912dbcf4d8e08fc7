import { aboveZeroField, numberField, optional, quantityField, si } from '../../quantity/index.ts';
import { broch1984 } from '../../source/broch-1984.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** Natural frequency with a mass Δm added, over that without: √(m/(m + Δm)), with the mass m that moves there. */
export function loadedFrequencyRatio(localMass: number, addedMass: number): number {
  aboveZero({ localMass });
  return Math.sqrt(localMass / (localMass + addedMass));
}

/** Motion with a mass added, over that without, where the same force drives it: m/(m + Δm). */
export function loadedMotionRatio(localMass: number, addedMass: number): number {
  aboveZero({ localMass });
  return localMass / (localMass + addedMass);
}

export const massLoadingWorking = working({
  name: 'mass-loading',
  title: 'What the mass of a transducer does to what it stands on',
  inputs: {
    localMass: aboveZeroField(
      quantityField('mass', 'Mass that moves with the surface', { symbol: 'm', example: '2 kg' }),
    ),
    addedMass: quantityField('mass', 'Transducer, mount and bracket together', { symbol: 'm_a', example: '150 g' }),
    frequency: optional(
      quantityField('frequency', 'Natural frequency without it', { symbol: 'f_1', example: '400 Hz' }),
    ),
  },
  outputs: {
    frequencyRatio: output(
      numberField('Natural frequency with it, over that without', { symbol: 'k_f' }),
      'k_f = √(m/(m + m_a))',
    ),
    motionRatio: output(
      numberField('Acceleration with it, over that without, for the same force', { symbol: 'k_a' }),
      'k_a = m/(m + m_a)',
    ),
    loadedFrequency: optionalOutput(
      quantityField('frequency', 'Natural frequency with it', { symbol: 'f_2' }),
      'f_2 = f_1 · √(m/(m + m_a))',
    ),
  },
  holds:
    'one mass on its spring, well below the mounted resonance of the transducer. Which mass moves with a thin cover is ' +
    'known only from a test: with two different masses added the shift tells it.',
  sources: [clause(broch1984, '10 % rule of mass loading')],
  evaluate: ({ localMass, addedMass, frequency }) => {
    const frequencyRatio = loadedFrequencyRatio(localMass, addedMass);
    return {
      frequencyRatio,
      motionRatio: loadedMotionRatio(localMass, addedMass),
      loadedFrequency: frequency === undefined ? undefined : si('frequency', frequency * frequencyRatio),
    };
  },
  example: { 'local-mass': '2 kg', 'added-mass': '150 g', frequency: '400 Hz' },
});
