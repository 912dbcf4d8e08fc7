import { answer, type Curve, si, stated } from '../quantity/index.ts';
import { complex } from '../signal/complex.ts';
import { densityAt } from './formulas/noise.ts';
import type { MountModel } from './mount/mount-kind.ts';
import type { Stage } from './stage.ts';
import type { Transducer } from './transducer/kinds.ts';
import { isolatedGain } from './two-port.ts';

/** What was found out of an installed chain by measuring it; each takes the place of what was predicted. */
export interface MeasuredFacts {
  /** As it stands on its mount, in hertz. */
  readonly mountedResonance?: number;
  /** Height of that resonance over the flat part. */
  readonly quality?: number;
  /** Gain found over gain designed, well inside the band. */
  readonly gain?: number;
  /** Noise at the input, V/√Hz over frequency. */
  readonly noise?: Curve;
}

/**
 * The transducer with what was measured in its data sheet, and the mount it then stands on: a measured resonance holds
 * as it stands, so the stiffness of the mount must not lower it once more.
 */
export function asMounted(
  transducer: Transducer,
  mount: MountModel,
  { mountedResonance, quality }: MeasuredFacts,
): { readonly transducer: Transducer; readonly mount: MountModel } {
  const { values } = transducer.sheet;
  if (!('mountedResonance' in values)) return { transducer, mount };
  const measured = {
    ...(mountedResonance === undefined
      ? {}
      : { mountedResonance: stated(si('frequency', mountedResonance), '', 'measured', 'tap test') }),
    ...(quality !== undefined && 'quality' in values
      ? { quality: stated(si('ratio', quality), '', 'measured', 'tap test') }
      : {}),
  };
  return {
    // The sheet keeps its kind: two of its fields have other values of the same quantity.
    transducer: { ...transducer, sheet: { ...transducer.sheet, values: { ...values, ...measured } } } as Transducer,
    mount: mountedResonance === undefined ? mount : { ...mount, stiffness: undefined },
  };
}

/** The row with the measured gain before its last stage, and the measured noise at its end in place of every own one. */
export function asFound(stages: readonly Stage[], { gain, noise }: MeasuredFacts): readonly Stage[] {
  const last = stages.at(-1);
  if (last === undefined) return stages;
  const row = gain === undefined ? stages : [...stages.slice(0, -1), gainStage(last, gain), last];
  if (noise === undefined) return row;
  const silent = row.map(({ noise: _replaced, residual: _counted, ...stage }): Stage => stage);
  return [...silent.slice(0, -1), { ...silent.at(-1)!, noise: answer((frequency) => densityAt(noise, frequency)) }];
}

function gainStage(before: Stage, gain: number): Stage {
  return {
    name: 'gain as measured',
    part: before.part,
    enters: before.enters,
    leaves: before.enters,
    through: () => isolatedGain(complex(gain, 0)),
  };
}
