import { fromAll } from '../../quantity/index.ts';
import { medianRatio } from '../check/noise-floor.ts';
import { chainOf, lowerCorner, noiseAtInput } from '../expected.ts';
import { voltsPerNumber } from '../measured-record.ts';
import { noisiestPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind, twoSided } from './identify-kind.ts';

/** The noise of the chain over the predicted, and its density octave by octave. */
export const noiseRatio = identifyKind({
  kind: 'noise-floor',
  title: 'Noise over the predicted',
  on: ['stopped'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  identify: ({ designed, record }): readonly FoundOfChain[] => {
    const known = fromAll(
      {
        density: record.measures.density,
        noise: noiseAtInput(designed),
        scale: voltsPerNumber(record),
        corner: lowerCorner(designed),
      },
      (each) => each,
    );
    if (!known.known) return [];
    const { density, noise, scale, corner } = known.value;
    const band = { low: Math.max(3 * corner, 3 * density.resolution), high: density.rate / 2.56 };
    const over = (low: number, high: number) => medianRatio(density, noise, scale, { low, high });
    const whole = over(band.low, band.high);
    if (whole === undefined) return [];
    const { ratio } = whole;
    const spread = (twoSided / 2) * whole.spread;
    const middle = Math.sqrt(band.low * band.high);
    return [
      {
        quantity: 'ratio',
        value: ratio,
        interval: { low: ratio * (1 - spread), high: ratio * (1 + spread) },
        predicted: 1,
        allowed: { low: 0.5, high: 2 },
        tolerance: 'half to twice: noise of single pieces differs',
        part: noisiestPart(designed, middle),
        facts: { noise: curve(noise, band, over, ratio) },
      },
    ];
  },
});

/** Predicted density times what octaves around each point show of it; outside the band as the next octave inside it. */
function curve(
  noise: (frequency: number) => number,
  band: { readonly low: number; readonly high: number },
  over: (low: number, high: number) => { readonly ratio: number } | undefined,
  otherwise: number,
) {
  const inside: { readonly at: number; readonly ratio: number }[] = [];
  for (let low = band.low; low < band.high; low *= 2) {
    const found = over(low, Math.min(2 * low, band.high));
    inside.push({ at: low * Math.SQRT2, ratio: found?.ratio ?? otherwise });
  }
  const [first, last] = [inside[0]!, inside.at(-1)!];
  const below = [0.001, 0.01, 0.1].map((share) => ({ at: first.at * share, ratio: first.ratio }));
  const points = [...below, ...inside, { at: 10 * last.at, ratio: last.ratio }];
  return {
    frequencies: points.map(({ at }) => at),
    densities: points.map(({ at, ratio }) => ratio * noise(at)),
  };
}
