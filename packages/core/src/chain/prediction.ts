import { type Answer, fromAll, thenAnswer } from '../quantity/index.ts';
import { type Complex, scaled } from '../signal/complex.ts';
import { type BiasWindow, biasWindow, electricalCeilings } from './bias-window.ts';
import { type CableDrive, cableDrive } from './cable-drive.ts';
import type { MeasuringChain } from './chain.ts';
import { type LoopPrediction, loopPrediction } from './loop-load.ts';
import { noiseAtEnd, residualAtEnd, type Stage, transfer } from './stage.ts';
import type { Ceiling } from './transducer/transducer-kind.ts';

/** What a chain will do, before it is bought. Every function takes frequency in hertz; all else is SI. */
export interface Prediction {
  readonly chain: MeasuringChain;
  /** Indicated over true motion with the nominal sensitivity set: 1 well inside the band. */
  readonly response: Answer<(frequency: number) => Complex>;
  /** Frequencies where the response turns sharply. */
  readonly features: readonly number[];
  /** Noise the analyst sees at standstill: density in the sensed motion, output noise over nominal sensitivity. */
  readonly noise: Answer<(frequency: number) => number>;
  /** Rms that counts in full wherever it is looked for, in the sensed motion. */
  readonly residual: Answer<(frequency: number) => number>;
  /** The share of each stage in that noise. */
  readonly noiseOf: Answer<readonly { readonly stage: Stage; density(frequency: number): number }[]>;
  readonly bias: Answer<BiasWindow> | undefined;
  readonly ceilings: readonly Answer<Ceiling>[];
  /** Current left to drive the cable, and the capacitance it must drive. */
  readonly drive: Answer<CableDrive> | undefined;
  readonly loop: LoopPrediction | undefined;
}

export function prediction(chain: MeasuringChain): Prediction {
  const relative = fromAll({ stages: chain.stages, sensitivity: chain.sensitivity }, (known) => known);
  const bias = biasWindow(chain);
  return {
    chain,
    response: fromAll({ relative }, ({ relative: { stages, sensitivity } }) =>
      remembered((frequency: number) => scaled(transfer(stages, frequency), 1 / sensitivity)),
    ),
    features: featuresOf(chain),
    noise: fromAll(
      { density: thenAnswer(relative, ({ stages, sensitivity }) => overSensitivity(noiseAtEnd(stages), sensitivity)) },
      ({ density }) => remembered(density),
    ),
    residual: fromAll(
      { relative },
      ({ relative: { stages, sensitivity } }) =>
        (frequency: number) =>
          residualAtEnd(stages, frequency) / sensitivity,
    ),
    noiseOf: thenAnswer(relative, ({ stages, sensitivity }) => sharesOfNoise(stages, sensitivity)),
    bias,
    ceilings: [...chain.transducer.ceilings, ...electricalCeilings(chain, bias)],
    drive: cableDrive(chain),
    loop: loopPrediction(chain),
  };
}

/**
 * The same function, which answers a frequency it was asked before without working it out again: rules, tables and
 * drawings ask one chain for the same frequencies. It remembers while there is room: of a plant of thousands of chains
 * the answers would weigh more than all else.
 */
function remembered<T>(at: (frequency: number) => T): (frequency: number) => T {
  let kept: WeakRef<Map<number, T>> | undefined;
  return (frequency) => {
    let known = kept?.deref();
    if (known === undefined) {
      known = new Map();
      kept = new WeakRef(known);
    }
    const before = known.get(frequency);
    if (before !== undefined) return before;
    const value = at(frequency);
    known.set(frequency, value);
    return value;
  };
}

/** Those of the stages; the resonance also where the rest of the row is not known, since the ceilings lean on it. */
function featuresOf(chain: MeasuringChain): readonly number[] {
  const ofStages = chain.stages.known ? chain.stages.value.flatMap((stage) => stage.features ?? []) : [];
  const { mountedResonance } = chain.transducer;
  return [...new Set(mountedResonance?.known ? [...ofStages, mountedResonance.value] : ofStages)];
}

type Density = (frequency: number) => number;

function overSensitivity(noise: Answer<Density>, sensitivity: number): Answer<Density> {
  return fromAll({ noise }, (known) => (frequency: number) => known.noise(frequency) / sensitivity);
}

function sharesOfNoise(stages: readonly Stage[], sensitivity: number): Prediction['noiseOf'] {
  const noisy = stages.filter((stage) => stage.noise !== undefined);
  const densities = noisy.map((stage) => overSensitivity(noiseAtEnd(onlyNoiseOf(stage, stages)), sensitivity));
  return fromAll(Object.fromEntries(densities.entries()), (known) =>
    noisy.map((stage, index) => ({ stage, density: known[index]! })),
  );
}

function onlyNoiseOf(kept: Stage, stages: readonly Stage[]): readonly Stage[] {
  return stages.map((stage) => {
    if (stage === kept || stage.noise === undefined) return stage;
    const { noise: _silenced, ...silent } = stage;
    return silent;
  });
}
