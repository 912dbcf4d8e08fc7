import {
  type Answer,
  type Band,
  fromAll,
  type Level,
  level,
  type Motion,
  motionOrder,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { bandNoise, type Integrations } from './formulas/noise.ts';
import type { Prediction } from './prediction.ts';

/** What integration makes of the noise in a band: the rise towards low frequency that buries a slow trace. */
export interface SkiSlope {
  readonly band: Band;
  /** With no corner counted: what an integrator meets at least that puts the corners right. */
  readonly cornersLeftOut: Level<Motion>;
  /** As the chain hands it on, its corners taking part of it away, and of the motion with it. */
  readonly asHandedOn: Level<Motion>;
}

/**
 * Noise of transducer and input as their data sheets state it, in the sensed motion: each over the nominal sensitivity,
 * added as squares, no corner counted. Where a corner attenuates the motion it is the measure of what can be corrected;
 * elsewhere it is the noise of the chain. Source: screening rules, F15 and F16.
 */
export function noiseBeforeCorners({ chain }: Prediction): Answer<(frequency: number) => number> {
  return thenAnswer(
    fromAll({ stages: chain.stages, sensitivity: chain.sensitivity }, (known) => known),
    ({ stages, sensitivity }) => {
      const own = stages.flatMap((stage) => (stage.noise === undefined ? [] : [stage.noise]));
      const all = fromAll(Object.fromEntries(own.map((each, index) => [index, each])), (known) => Object.values(known));
      return fromAll(
        { all },
        (known) => (frequency: number) =>
          known.all.reduce((total, density) => Math.hypot(total, density(frequency) / sensitivity), 0),
      );
    },
  );
}

/** Rms of the noise as the motion asked for; unknown where the transducer senses less than that motion differentiated. */
export function skiSlope(predicted: Prediction, motion: Motion, band: Band): Answer<SkiSlope> {
  const { senses } = predicted.chain.transducer;
  const integrations = motionOrder[senses] - motionOrder[motion];
  if (integrations < 0)
    return unanswered([{ of: predicted.chain.of, what: `${motion}, which ${senses} does not give` }]);
  const rms = (density: (frequency: number) => number) =>
    level(motion, bandNoise(density, band.low, band.high, integrations as Integrations), 'rms', band);
  return fromAll({ before: noiseBeforeCorners(predicted), after: predicted.noise }, ({ before, after }) => ({
    band,
    cornersLeftOut: rms(before),
    asHandedOn: rms(after),
  }));
}
