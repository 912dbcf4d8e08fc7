import { type Answer, answerOf, asMotion, fromAll, type Level } from '../quantity/index.ts';
import type { WiredPoint } from './graph.ts';
import type { GroundLoop } from './ground-loops.ts';
import { humAs, humPerMillivolt } from './hum.ts';

/** What a loop through the signal reads as at one of the points it passes. */
export interface LoopHum {
  readonly point: string;
  /** Each millivolt rms between the earths. */
  readonly perMillivolt: Answer<Level<'velocity'>>;
  /** All of the voltage stated between the earths, with its detector. */
  readonly stated: Answer<Level<'velocity'>>;
}

/**
 * The most hum a ground loop adds at each of its points: v = U/S in the motion sensed, turned into velocity at the
 * frequency of the mains. Only a loop through the signal adds to it directly; of a loop of screens nothing is told.
 * Valid well inside the band of the chain. Unknown sensitivity, mains or voltage is named in the answer.
 */
export function loopHum(loop: GroundLoop, points: readonly WiredPoint[]): readonly LoopHum[] {
  if (loop.through !== 'signal') return [];
  return points
    .filter(({ point }) => loop.points.includes(point.of))
    .map(({ point, chain, wiring }): LoopHum => {
      const mains = answerOf<number>(wiring?.values.mains, point.of, 'mains frequency');
      const voltage = answerOf(wiring?.values.earthVoltage, point.of, 'voltage between the earths');
      const all = fromAll({ voltage, mains, sensitivity: chain.sensitivity }, (known) =>
        asMotion(humAs(known.voltage, known.sensitivity, chain.transducer.senses), 'velocity', known.mains),
      );
      return { point: point.of, perMillivolt: humPerMillivolt(chain, mains), stated: all };
    });
}
