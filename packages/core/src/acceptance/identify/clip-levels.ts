import { fromAll } from '../../quantity/index.ts';
import { coverageFactor } from '../../uncertainty/coverage.ts';
import { readingError } from '../check/bias.ts';
import { predictionOf } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { inputPart, transducerPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind, twoSided } from './identify-kind.ts';

/** A rest on a rail: from this share of the extreme on, so many samples long, and so many of them. */
const near = 0.98;
const longest = 6;
const fewest = 3;

/** The ends of the swing, where a direct-coupled record rests on them. */
export const clipLevels = identifyKind({
  kind: 'clip-levels',
  title: 'Clip levels',
  on: ['running', 'taps'],
  applies: (designed) => predictionOf(designed)?.bias !== undefined,
  identify: ({ designed, record }): readonly FoundOfChain[] => {
    const { measures, statement } = record;
    // Only with its direct voltage an end of the swing stands where it stands.
    if (!statement.coupling.known || statement.coupling.value !== 'direct') return [];
    const known = fromAll({ bias: predictionOf(designed)!.bias!, scale: voltsPerNumber(record) }, (each) => each);
    if (!known.known) return [];
    const { bias, scale } = known.value;
    const middle = (bias.low + bias.high) / 2;
    const volts = measures.excerpt.map((each) => each * scale);
    const top = bias.high + bias.swing.top;
    const bottom = bias.low - bias.swing.bottom;
    return [
      ...rail('upper rail', top, inputPart(designed), middle, volts),
      ...rail('lower rail', bottom, transducerPart(designed), middle, volts),
    ];
  },
});

function rail(
  of: string,
  predicted: number,
  part: string,
  middle: number,
  volts: Float64Array,
): readonly FoundOfChain[] {
  const side = Math.sign(predicted - middle);
  let most = 0;
  for (const each of volts) most = Math.max(most, side * (each - middle));
  const rests: number[] = [];
  let [sum, count] = [0, 0];
  for (let n = 0; n <= volts.length; n++) {
    const out = n < volts.length ? side * (volts[n]! - middle) : 0;
    if (out >= near * most) {
      sum += volts[n]!;
      count += 1;
      continue;
    }
    // The samples at both ends of a rest may lie on the way to it.
    if (count >= longest) rests.push((sum - volts[n - 1]! - volts[n - count]!) / (count - 2));
    [sum, count] = [0, 0];
  }
  if (rests.length < fewest) return [];
  const mean = rests.reduce((total, each) => total + each, 0) / rests.length;
  const variance = rests.reduce((total, each) => total + (each - mean) ** 2, 0) / (rests.length - 1);
  // How true the recorder reads a direct voltage counts for far more than how steadily the record rests.
  const own = Math.hypot(readingError.zero, readingError.share * mean) / 2;
  const reach = Math.hypot(twoSided * own, coverageFactor(0.95, rests.length - 1) * Math.sqrt(variance / rests.length));
  const slack = 0.1 * Math.abs(predicted - middle);
  return [
    {
      of,
      quantity: 'voltage',
      value: mean,
      interval: { low: mean - reach, high: mean + reach },
      predicted,
      allowed: { low: predicted - slack, high: predicted + slack },
      tolerance: 'a tenth of the swing: saturation and source drop of single pieces differ. Common practice, no source',
      part,
    },
  ];
}
