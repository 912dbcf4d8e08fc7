import {
  type DesignedMachine,
  type DesignedPoint,
  designedMachine,
  type RehearsalScript,
  type RehearsedMotion,
} from '../../packages/core/src/index.ts';
import { examplePlant } from '../reading.ts';

/** A point of an example with the chain chosen for it. */
export interface ChainedPoint {
  readonly name: string;
  readonly machine: DesignedMachine;
  readonly point: DesignedPoint;
}

const folders = [
  'raw-water-pump',
  'kiln-support-roller',
  'turbo-compressor',
  'vibrating-screen',
  'hydrogen-compressor',
  'wind-turbine',
];

let made: readonly ChainedPoint[] | undefined;

/** Every point of the examples that has a chain. */
export function chainedPoints(): readonly ChainedPoint[] {
  made ??= folders.flatMap((folder) => {
    const plant = examplePlant(folder);
    return plant.machines
      .map((machine) => designedMachine(plant, machine, 1))
      .flatMap((machine) =>
        machine.points
          .filter((point) => point.appraisal !== undefined)
          .map((point) => ({ name: point.point.of, machine, point })),
      );
  });
  return made;
}

export const silent: RehearsalScript = {
  seconds: 1,
  rate: 65_536,
  seed: 1,
  course: { is: 'standstill' },
  lead: 0,
  healthy: 0,
  faults: [],
  background: [],
};

/** A motion given by its samples, as a rehearsal would give it. */
export function motionOf(
  of: Pick<RehearsedMotion, 'motion' | 'rate' | 'samples' | 'lead'>,
  script: RehearsalScript = silent,
): RehearsedMotion {
  return {
    ...of,
    of: 'test',
    turns: new Float64Array(of.samples.length),
    reference: 'shaft',
    speed: { first: 0, last: 0 },
    contents: [],
    script,
  };
}
