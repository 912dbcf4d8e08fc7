import { delayBetween } from '../../signal/measures/delay.ts';
import { sharedByLines } from '../../signal/measures/power-density.ts';
import { type OverReference, responseOverReference, wrapped } from '../beside-reference.ts';
import { chainOf } from '../expected.ts';
import { inputPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind, twoSided } from './identify-kind.ts';

/** Lines that are needed, and how far they must span in frequency. */
const fewest = 12;
const span = 1.5;

/** How much later a channel is than the reference beside it, beyond what its own corners hold it back. */
export const delay = identifyKind({
  kind: 'delay',
  title: 'Delay between channels',
  on: ['beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  identify: (looked): readonly FoundOfChain[] => {
    const response = responseOverReference(looked);
    if (!response.known) return [];
    const { lines, cross } = response.value;
    if (lines.length < fewest || lines.at(-1)!.frequency < span * lines[0]!.frequency) return [];
    const begun = delayBetween(cross, lines[0]!.frequency, lines.at(-1)!.frequency);
    if (!begun.known) return [];
    const found = delayFrom(response.value, begun.value.delay);
    const reach = 0.5 / cross.rate;
    return [
      {
        quantity: 'time',
        value: found.delay,
        interval: {
          low: found.delay - twoSided * found.deviation,
          high: found.delay + twoSided * found.deviation,
        },
        predicted: 0,
        allowed: { low: -reach, high: reach },
        tolerance: 'half a sample',
        part: inputPart(looked.designed),
      },
    ];
  },
});

/**
 * Slope of the phase that the prediction leaves over, by weighted least squares about a first guess: τ = −(dφ/df)/2π, in
 * seconds. Neighbouring lines share noise through the window, so fewer count.
 */
function delayFrom({ lines, cross }: OverReference, guess: number) {
  const left = lines.map((each) => each.phase + 2 * Math.PI * each.frequency * guess);
  const around = Math.atan2(
    left.reduce((sum, each) => sum + Math.sin(each), 0),
    left.reduce((sum, each) => sum + Math.cos(each), 0),
  );
  let [w, wf, wp, wff, wfp] = [0, 0, 0, 0, 0];
  for (const [index, { frequency, deviation }] of lines.entries()) {
    const [weight, rest] = [1 / deviation ** 2, wrapped(left[index]! - around)];
    w += weight;
    wf += weight * frequency;
    wp += weight * rest;
    wff += weight * frequency * frequency;
    wfp += weight * frequency * rest;
  }
  const spread = wff - (wf * wf) / w;
  return {
    delay: guess - (wfp - (wf * wp) / w) / spread / (2 * Math.PI),
    deviation: Math.sqrt(sharedByLines(cross, cross.segments) / spread) / (2 * Math.PI),
  };
}
