import type { Target } from '../demand/target.ts';
import {
  type Answer,
  answer,
  asSineDetector,
  type Band,
  fromAll,
  type Level,
  type Motion,
  motionOrder,
  thenAnswer,
} from '../quantity/index.ts';
import { bandNoise, lineNoise } from './formulas/noise.ts';
import type { Prediction } from './prediction.ts';
import { responseExtremes } from './response.ts';

/** Noise and smallest signal of one target, in its own motion, and their ratio. */
export interface Visibility {
  readonly signal: Level<Motion>;
  readonly noise: Level<Motion>;
  readonly decibels: number;
  readonly bandwidth: Band | { readonly line: number; readonly spacing: number };
}

/** As far below the noise as is told, in decibels: what a chain passes less of cannot be told from nothing. */
export const lostInNoise = -200;

/**
 * The smallest level as the chain indicates it, over the noise in its line or band. A response above 1 is not counted
 * as gain: a resonance that lifts the burst is not to be relied on.
 */
export function visibility(target: Target, predicted: Prediction): Answer<Visibility> {
  return thenAnswer(
    fromAll(
      {
        noise: predicted.noise,
        residual: predicted.residual,
        smallest: target.smallest,
        bandwidth: target.observable.noiseBandwidth(target),
        extremes: responseExtremes(target, predicted),
      },
      (known) => known,
    ),
    ({ noise, residual, smallest, bandwidth, extremes }) => {
      const integrations = motionOrder[predicted.chain.transducer.senses] - motionOrder[target.motion];
      const band = 'band' in bandwidth ? bandwidth.band : undefined;
      const broad =
        band === undefined
          ? lineNoiseIn(bandwidth as { line: number; spacing: number }, noise, integrations)
          : bandNoiseIn(band, noise, integrations);
      const place = band === undefined ? (bandwidth as { line: number }).line : Math.sqrt(band.low * band.high);
      const noiseRms = Math.hypot(broad, residual(place) / (2 * Math.PI * place) ** integrations);
      const counted = asSineDetector(smallest, target.observable.against);
      const passed = Math.min(1, 1 + extremes.lowest.error);
      const signal = { ...counted, value: counted.value * passed };
      return answer({
        signal,
        noise: {
          quantity: target.motion,
          value: noiseRms,
          detector: 'rms' as const,
          ...(band === undefined ? {} : { band }),
        },
        decibels: Math.max(lostInNoise, 20 * Math.log10(signal.value / noiseRms)),
        bandwidth: band ?? (bandwidth as { line: number; spacing: number }),
      });
    },
  );
}

function bandNoiseIn(band: Band, noise: (frequency: number) => number, integrations: number): number {
  return bandNoise((frequency) => noise(frequency) / (2 * Math.PI * frequency) ** integrations, band.low, band.high);
}

function lineNoiseIn(
  line: { line: number; spacing: number },
  noise: (frequency: number) => number,
  integrations: number,
): number {
  return lineNoise(noise(line.line) / (2 * Math.PI * line.line) ** integrations, line.spacing);
}
