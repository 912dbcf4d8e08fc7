import type { CheckedRecord } from '../check/check-kind.ts';
import { decayFound } from '../check/resonance.ts';
import { resonanceOf } from '../expected.ts';
import { mountPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind } from './identify-kind.ts';

/** Frequency of the mounted resonance, by several taps and Student's t. */
export const mountedResonance = identifyKind({
  kind: 'mounted-resonance',
  title: 'Mounted resonance',
  on: ['taps'],
  applies: (designed) => resonanceOf(designed) !== undefined,
  identify: (looked): readonly FoundOfChain[] => {
    const ringing = ringDown(looked);
    if (ringing === undefined) return [];
    const { predicted, found } = ringing;
    const [low, high] = found.frequencyInterval;
    return [
      {
        quantity: 'frequency',
        value: found.frequency,
        interval: { low, high },
        predicted,
        allowed: { low: 0.75 * predicted, high: 1.4 * predicted },
        tolerance: 'three quarters to 1.4 times: the stiffness of a mount is known no better',
        part: mountPart(looked.designed),
        facts: { mountedResonance: found.frequency },
      },
    ];
  },
});

/** What rings after the taps of a record, and where it is expected. */
export function ringDown({ designed, record }: CheckedRecord) {
  const predicted = resonanceOf(designed);
  if (predicted?.known !== true) return undefined;
  const found = decayFound(record, predicted.value);
  return found.known ? { predicted: predicted.value, found: found.value } : undefined;
}
