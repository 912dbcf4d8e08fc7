import { magnitude } from '../../signal/complex.ts';
import { predictionOf, resonanceOf } from '../expected.ts';
import { mountPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind } from './identify-kind.ts';
import { ringDown } from './mounted-resonance.ts';

/** Height of the mounted resonance over the flat part, 1/(2ζ) of what rings after the taps. */
export const quality = identifyKind({
  kind: 'quality',
  title: 'Height of the mounted resonance',
  on: ['taps'],
  applies: (designed) => resonanceOf(designed) !== undefined,
  identify: (looked): readonly FoundOfChain[] => {
    const ringing = ringDown(looked);
    const response = predictionOf(looked.designed)?.response;
    if (ringing === undefined || response?.known !== true) return [];
    const { damping, dampingInterval } = ringing.found;
    // An interval that reaches no damping at all tells no height.
    if (!(dampingInterval[0] > 0)) return [];
    const value = 1 / (2 * damping);
    const predicted = magnitude(response.value(ringing.predicted));
    return [
      {
        quantity: 'ratio',
        value,
        interval: { low: 1 / (2 * dampingInterval[1]), high: 1 / (2 * dampingInterval[0]) },
        predicted,
        allowed: { low: predicted / 4, high: 4 * predicted },
        tolerance: 'a quarter to four times: the damping of a mount is rarely stated. Common practice, no source',
        part: mountPart(looked.designed),
        facts: { quality: value },
      },
    ];
  },
});
