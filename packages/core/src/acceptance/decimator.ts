import { digitalLowPass, runningFilter } from '../signal/measures/digital-filter.ts';

/**
 * Thins blocks out to every `by`-th sample behind a low-pass of order 8 at 0.4 of the new rate, so that what folds back
 * onto the lower third of the new band is at least 60 dB down. How the record is cut into blocks changes nothing.
 */
export function decimator(by: number, rate: number): (block: Float64Array) => Float64Array {
  const filter = runningFilter(digitalLowPass((0.4 * rate) / by, 8, rate), 'steady');
  let next = 0;
  return (block) => {
    // A value that is no number would never leave the filter again; it stands still instead.
    let last = 0;
    const through = block.map((value) => {
      if (Number.isFinite(value)) last = value;
      return last;
    });
    filter.through(through);
    const kept = new Float64Array(Math.max(0, Math.ceil((block.length - next) / by)));
    for (let at = 0; at < kept.length; at++) kept[at] = through[next + at * by]!;
    next = next + kept.length * by - block.length;
    return kept;
  };
}
