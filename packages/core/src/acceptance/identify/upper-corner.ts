import { sharedByLines } from '../../signal/measures/power-density.ts';
import { responseOverReference, type SharedLine } from '../beside-reference.ts';
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
    if (!response.known || response.value.broad.length < fewest) return [];
    const { broad: lines, cross } = response.value;
    // Weighed by the line that was fitted before, not by each value's own noise: twice is enough.
    let fit = straightLine(lines, () => 1);
    for (let pass = 0; pass < 2; pass++) {
      const { level: a, slope: b } = fit;
      fit = straightLine(lines, (x) => Math.max(0.1 * Math.abs(a), a + b * x));
    }
    const { w, wx, wxx, whole, slope, level } = fit;
    // Neighbouring lines share noise through the window.
    const shared = sharedByLines(cross, cross.segments);
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

/** 1/|ratio|² over f², weighed by the deviation it has where its own value is `near`. A square of noise lifts it by 3σ². */
function straightLine(lines: readonly SharedLine[], near: (x: number) => number) {
  let [w, wx, wy, wxx, wxy] = [0, 0, 0, 0, 0];
  for (const { frequency, ratio, deviation } of lines) {
    const x = frequency * frequency;
    const y = (1 - 3 * deviation * deviation) / (ratio * ratio);
    const weight = 1 / (2 * near(x) * deviation) ** 2;
    w += weight;
    wx += weight * x;
    wy += weight * y;
    wxx += weight * x * x;
    wxy += weight * x * y;
  }
  const whole = w * wxx - wx * wx;
  return { w, wx, wxx, whole, slope: (w * wxy - wx * wy) / whole, level: (wxx * wy - wx * wxy) / whole };
}
