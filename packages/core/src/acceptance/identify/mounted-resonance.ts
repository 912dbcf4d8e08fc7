import { fromAll } from '../../quantity/index.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { decayFound } from '../check/resonance.ts';
import { resonanceOf } from '../expected.ts';
import { mountPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind } from './identify-kind.ts';

/** A resonance is looked for between these shares of the predicted one. */
const search = { low: 0.2, high: 1.6 } as const;

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
  const known = fromAll({ rate: record.measures.rate, predicted: resonanceOf(designed)! }, (each) => each);
  if (!known.known) return undefined;
  const { rate, predicted } = known.value;
  const found = decayFound(record, search.low * predicted, Math.min(search.high * predicted, 0.45 * rate));
  return found.known ? { predicted, found: found.value } : undefined;
}
