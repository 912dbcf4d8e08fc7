import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { quantityField, si } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** Current at which a loop is judged where no fault current is stated: room for a fault-high signal of NE 43, 21 mA. */
export const usualFaultCurrent = 0.0215;

/**
 * Largest resistance a loop may have, in ohms: R = (V_supply − V_device − V_drops)/I, at the largest current the device
 * sends. Zero or negative where even a short circuit would leave the device below its least voltage.
 */
export function maximumLoopResistance(supply: number, deviceMinimum: number, drops: number, current: number): number {
  aboveZero({ faultCurrent: current });
  return (supply - deviceMinimum - drops) / current;
}

const form = clause(loopPractice, 'load line', 'from memory');

export const loopLoad = working({
  name: 'loop-load',
  title: 'Largest resistance a two-wire loop may have',
  inputs: {
    supply: quantityField('voltage', 'Lowest voltage of the supply', { symbol: 'V_s', example: '21.6 V' }),
    deviceMinimum: quantityField('voltage', 'Least voltage the transmitter needs at its terminals', {
      symbol: 'V_d',
      example: '12 V',
    }),
    drops: optional(
      quantityField('voltage', 'Fixed voltage drops in the loop, such as diodes; left out: none', {
        symbol: 'V_x',
        example: '0.7 V',
      }),
    ),
    faultCurrent: optional(
      quantityField('current', 'Largest current the transmitter sends; left out: 21.5 mA, and the result says so', {
        symbol: 'I_f',
        example: '22 mA',
      }),
    ),
  },
  outputs: {
    assumedCurrent: optionalOutput(
      quantityField('current', 'Current assumed because no fault current was stated', { symbol: 'I_f' }),
      'I_f = 21.5 mA, an assumption: room for the fault-high signal of NE 43',
    ),
    fixedDrops: output(
      quantityField('voltage', 'What the transmitter and the fixed drops take', { symbol: 'V_t' }),
      'V_t = V_d + V_x, V_x zero where there are none',
    ),
    maximumResistance: output(
      quantityField('resistance', 'Card, cores, barrier and all else together', { symbol: 'R' }),
      'R = (V_s − V_t)/I_f',
    ),
  },
  holds:
    'supply at its lowest and all resistances at their highest. Without a fault current: 21.5 mA, so that a NE 43 fault-high current still fits; some devices send up to 23 mA.',
  sources: [form, clause(namurNe43, 'failure signal')],
  evaluate: ({ supply, deviceMinimum, drops, faultCurrent }) => ({
    assumedCurrent: faultCurrent === undefined ? si('current', usualFaultCurrent) : undefined,
    fixedDrops: si('voltage', deviceMinimum + (drops ?? 0)),
    maximumResistance: si(
      'resistance',
      maximumLoopResistance(supply, deviceMinimum, drops ?? 0, faultCurrent ?? usualFaultCurrent),
    ),
  }),
  doubts: ({ supply, deviceMinimum, drops, faultCurrent }) => [
    ...(faultCurrent === undefined ? [assumed()] : []),
    ...noVoltage(supply - deviceMinimum - (drops ?? 0)),
  ],
  example: { supply: '21.6 V', 'device-minimum': '12 V' },
});

function assumed(): Finding {
  return finding({
    rule: 'loop/assumed-fault-current',
    weight: 'notes',
    at: 'loop-load/fault-current',
    found: 'no fault current stated',
    limit: said`computed at ${measured('current', usualFaultCurrent)}`,
    because: 'The fault-high signal must still fit, or the fault reads as a value; a device may send more than this.',
    remedy: ['state the fault current of the transmitter'],
    sources: [clause(namurNe43, 'failure signal')],
    asks: 'What is the largest current the transmitter sends? Its data sheet says.',
  });
}

function noVoltage(spare: number): readonly Finding[] {
  if (spare > 0) return [];
  return [
    finding({
      rule: 'loop/no-voltage',
      weight: 'blocks-issue',
      at: 'loop-load/supply',
      found: said`${measured('voltage', spare)} left for the loop`,
      limit: 'more than 0 V',
      because: 'The transmitter would not get its least voltage even without any load.',
      remedy: ['a higher supply voltage', 'a transmitter that needs less', 'fewer drops'],
      sources: [form],
    }),
  ];
}
