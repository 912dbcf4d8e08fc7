import type { MeasuringChain } from '../chain/chain.ts';
import {
  type Answer,
  aboveZeroField,
  asMotion,
  fromAll,
  type Level,
  level,
  levelField,
  type Motion,
  quantityField,
} from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { output, working } from '../working/index.ts';

/**
 * What a hum voltage at the input reads as, in the motion the transducer senses: x = U/S, with the sensitivity S in
 * volts per SI unit of that motion. Valid well inside the band; the detector of the voltage is kept.
 */
export function humAs<M extends Motion>(voltage: Level<'voltage'>, sensitivity: number, senses: M): Level<M> {
  const [U, S] = [voltage.value, sensitivity];
  return level(senses, U / S, voltage.detector);
}

/** What each millivolt (rms) of hum on a chain reads as at the frequency of the mains, in velocity. */
export function humPerMillivolt(
  chain: Pick<MeasuringChain, 'sensitivity' | 'transducer'>,
  mains: Answer<number>,
): Answer<Level<'velocity'>> {
  return fromAll({ sensitivity: chain.sensitivity, mains }, ({ sensitivity, mains: frequency }) =>
    asMotion(humAs(level('voltage', 1e-3, 'rms'), sensitivity, chain.transducer.senses), 'velocity', frequency),
  );
}

export const humAsVibration = working({
  name: 'hum-as-vibration',
  title: 'What a hum voltage reads as on an accelerometer',
  inputs: {
    voltage: levelField(['voltage'], 'Hum at the input, or between two earths where all of it reaches the input', {
      symbol: 'U',
      example: '1 mV rms',
    }),
    frequency: aboveZeroField(
      quantityField('frequency', 'Its frequency: that of the mains, or a multiple', { symbol: 'f', example: '50 Hz' }),
    ),
    sensitivity: aboveZeroField(
      quantityField('voltage per acceleration', 'Sensitivity of the transducer', { symbol: 'S', example: '100 mV/g' }),
    ),
  },
  outputs: {
    acceleration: output(levelField(['acceleration'], 'Acceleration it reads as', { symbol: 'a' }), 'a = U/S'),
    velocity: output(levelField(['velocity'], 'Velocity it reads as', { symbol: 'v' }), 'v = a/(2π · f)'),
    displacement: output(levelField(['displacement'], 'Displacement it reads as', { symbol: 'x' }), 'x = a/(2π · f)^2'),
  },
  holds:
    'one sine, well inside the band of the chain, all of it in series with the signal: the worst a ground loop can do. ' +
    'A return of less resistance than the rest of the loop takes its share only.',
  sources: [clause(tradePractice, '1 mV of hum on 100 mV/g')],
  evaluate: ({ voltage, frequency, sensitivity }) => {
    const acceleration = humAs(voltage, sensitivity, 'acceleration');
    return {
      acceleration,
      velocity: asMotion(acceleration, 'velocity', frequency),
      displacement: asMotion(acceleration, 'displacement', frequency),
    };
  },
  example: { voltage: '1 mV rms', frequency: '50 Hz', sensitivity: '100 mV/g' },
});
