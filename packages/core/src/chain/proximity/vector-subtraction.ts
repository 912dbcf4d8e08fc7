import { levelField, motions, quantityField, si } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { vectorDifference } from './vectors.ts';

const amplitude = (meaning: string, symbol: string, example: string) =>
  levelField(motions, meaning, { symbol, example });
const angle = (meaning: string, symbol: string, example: string) =>
  quantityField('angle', meaning, { symbol, example });

export const vectorSubtraction = working({
  name: 'vector-subtraction',
  title: 'Slow roll taken from a running vector',
  inputs: {
    amplitude: amplitude('Amplitude at speed', 'A', '31.0 um pp'),
    phase: angle('Its phase against the once-per-turn mark', 'α', '112 deg'),
    slowRoll: amplitude('Amplitude at slow roll', 'B', '5.1 um pp'),
    slowRollPhase: angle('Its phase, counted the same way', 'β', '40 deg'),
  },
  outputs: {
    compensated: output(amplitude('What is left without the run-out', 'C', '29.82 um pp'), 'C = |A·e^(jα) − B·e^(jβ)|'),
    compensatedPhase: output(angle('Its phase', 'γ', '121.4 deg'), 'γ = arg(A·e^(jα) − B·e^(jβ))'),
  },
  holds:
    'one probe, one order, one detector, both phases counted the same way against the same mark; the run-out turns with the shaft and does not change with speed. Magnitudes must not be subtracted.',
  sources: [clause(api670, 'slow-roll compensation', 'from memory')],
  evaluate: ({ amplitude: a, phase, slowRoll, slowRollPhase }) => {
    const left = vectorDifference({ amplitude: a, phase }, { amplitude: slowRoll, phase: slowRollPhase });
    return { compensated: left.amplitude, compensatedPhase: si('angle', left.phase) };
  },
  example: { amplitude: '31.0 um pp', phase: '112 deg', 'slow-roll': '5.1 um pp', 'slow-roll-phase': '40 deg' },
});
