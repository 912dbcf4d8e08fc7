import { responseOverReference } from '../beside-reference.ts';
import { chainOf } from '../expected.ts';
import { inputPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind, twoSided } from './identify-kind.ts';

const fewest = 12;

/**
 * A first-order low-pass that the prediction does not have, where lines beside a reference show one: 1/|ratio|² =
 * a·(1 + (f/f_c)²) is a straight line in f², f_c = √(a/b). Nothing where the slope is not clear.
 */
export const upperCorner = identifyKind({
  kind: 'upper-corner',
  title: 'Upper corner that was not designed',
  on: ['beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  identify: (looked): readonly FoundOfChain[] => {
    const response = responseOverReference(looked);
    if (!response.known || response.value.lines.length < fewest) return [];
    const { lines, cross } = response.value;
    let [w, wx, wy, wxx, wxy] = [0, 0, 0, 0, 0];
    for (const { frequency, ratio, deviation } of lines) {
      const [x, y] = [frequency * frequency, 1 / (ratio * ratio)];
      const weight = 1 / (2 * y * deviation) ** 2;
      w += weight;
      wx += weight * x;
      wy += weight * y;
      wxx += weight * x * x;
      wxy += weight * x * y;
    }
    const whole = w * wxx - wx * wx;
    const slope = (w * wxy - wx * wy) / whole;
    const level = (wxx * wy - wx * wxy) / whole;
    // Neighbouring lines share noise through the window.
    const shared = cross.noiseBandwidth / cross.resolution;
    const [slopeError, levelError] = [Math.sqrt((shared * w) / whole), Math.sqrt((shared * wxx) / whole)];
    if (!(slope > 5 * slopeError && level > 5 * levelError)) return [];
    // The relative error of a/b with both errors and what they share; half of it is that of its root.
    const common = (-shared * wx) / whole;
    const relative = Math.sqrt((slopeError / slope) ** 2 + (levelError / level) ** 2 - (2 * common) / (slope * level));
    const corner = Math.sqrt(level / slope);
    const top = lines.at(-1)!.frequency;
    // A corner so far above the last line is a slope of other causes.
    if (corner > 5 * top) return [];
    const reach = (twoSided * relative) / 2;
    return [
      {
        quantity: 'frequency',
        value: corner,
        interval: { low: corner * (1 - reach), high: corner * (1 + reach) },
        predicted: 5 * top,
        allowed: { low: 5 * top, high: Number.POSITIVE_INFINITY },
        tolerance: 'none within five times the highest line that both channels share',
        part: inputPart(looked.designed),
      },
    ];
  },
});
