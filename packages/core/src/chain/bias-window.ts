import { type Answer, fromAll } from '../quantity/index.ts';
import { magnitude } from '../signal/complex.ts';
import type { MeasuringChain } from './chain.ts';
import { type Swing, swing } from './formulas/iepe-headroom.ts';
import { fieldSide, lineResistance } from './line.ts';
import { transfer } from './stage.ts';
import type { Ceiling } from './transducer/transducer-kind.ts';

/** Where the output of a constant-current transducer stands, and how far it can swing, over the bias tolerance. */
export interface BiasWindow {
  readonly low: number;
  readonly high: number;
  readonly lineDrop: number;
  readonly swing: Swing;
}

/**
 * Top = compliance − source drop − I·R − highest bias; bottom = lowest bias − saturation. Holds for a resistive line;
 * the smaller of both is what a symmetric signal may use. Behind an isolator in the line nothing counts any more: its own
 * field voltage and current stand in place of the input's.
 */
export function biasWindow(chain: MeasuringChain): Answer<BiasWindow> | undefined {
  const { biased } = chain.transducer;
  const { fedBy } = chain;
  if (biased === undefined || fedBy === undefined) return undefined;
  return fromAll(
    {
      bias: biased.bias,
      saturation: biased.saturation,
      compliance: fedBy.compliance,
      drop: fedBy.drop,
      current: fedBy.current,
      resistance: lineResistance(chain.line),
    },
    ({ bias, saturation, compliance, drop, current, resistance }) => ({
      low: bias.low,
      high: bias.high,
      lineDrop: current * resistance,
      swing: swing({ compliance, sourceDrop: drop, seriesDrop: current * resistance, bias, saturation }),
    }),
  );
}

/** The swing of the electronics and the range of the input as ceilings on the sensed motion. */
export function electricalCeilings(
  chain: MeasuringChain,
  bias: Answer<BiasWindow> | undefined,
): readonly Answer<Ceiling>[] {
  const { transducer, input } = chain;
  const motion = transducer.senses;
  const ceilings: Answer<Ceiling>[] = [];
  const outputGain = fromAll({ stages: transducer.stages, sensitivity: transducer.sensitivity }, (known) => known);
  if (bias !== undefined) {
    ceilings.push(
      fromAll({ bias, outputGain }, ({ bias: window, outputGain: { stages, sensitivity } }) => ({
        name: window.swing.top <= window.swing.bottom ? 'swing to the supply' : 'swing to saturation',
        part: chain.of,
        motion,
        peak: Math.max(0, Math.min(window.swing.top, window.swing.bottom)) / sensitivity,
        gain: (frequency: number) => magnitude(transfer(stages, frequency)) / sensitivity,
      })),
    );
  }
  const passed = fieldSide(chain.line).isolator?.isolation?.peakVoltage;
  if (passed !== undefined) {
    ceilings.push(
      fromAll({ passed, outputGain }, ({ passed: peak, outputGain: { stages, sensitivity } }) => ({
        name: 'range of the isolator',
        part: chain.of,
        motion,
        peak: peak / sensitivity,
        gain: (frequency: number) => magnitude(transfer(stages, frequency)) / sensitivity,
      })),
    );
  }
  if (input.peakVoltage !== undefined && (chain.meets || chain.doubt !== undefined)) {
    ceilings.push(
      fromAll(
        { peak: input.peakVoltage, stages: chain.stages, sensitivity: chain.sensitivity },
        ({ peak, stages, sensitivity }) => ({
          name: 'input range',
          part: input.of,
          motion,
          peak: peak / sensitivity,
          gain: (frequency: number) => magnitude(transfer(stages, frequency)) / sensitivity,
        }),
      ),
    );
  }
  return ceilings;
}
