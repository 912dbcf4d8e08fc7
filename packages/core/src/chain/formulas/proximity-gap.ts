import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { quantityField, Refusal, si } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/**
 * Direct voltage of a proximity system at a gap: V = −S·g, negative because the oscillator-demodulator lives on a
 * negative supply, and more so the wider the gap. Scale factor in V/m, gap in m.
 */
export function gapVoltage(scaleFactor: number, gap: number): number {
  aboveZero({ scaleFactor });
  return -scaleFactor * gap;
}

/** Gap in metres of a direct voltage in volts, |V|/S with the scale factor S in V/m; its sign is that of the supply and does not matter. */
export function gapOfVoltage(scaleFactor: number, voltage: number): number {
  aboveZero({ scaleFactor });
  return Math.abs(voltage) / scaleFactor;
}

/** Outside about −1.5 and −20 V an eddy-current system on −24 V no longer follows its straight line; from memory. */
const straight = { low: -20, high: -1.5 } as const;

const convention = clause(tradePractice, 'negative gap voltage on a negative supply');

export const proximityGap = working({
  name: 'proximity-gap',
  title: 'Gap and direct voltage of a proximity system',
  inputs: {
    scaleFactor: quantityField('voltage per displacement', 'Scale factor on the steel it looks at', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
    gap: optional(
      quantityField('length', 'Gap between probe and target; give this or the voltage', {
        symbol: 'g',
        example: '1.27 mm',
      }),
    ),
    voltage: optional(
      quantityField('voltage', 'Direct voltage at the output, below zero; give this or the gap', {
        symbol: 'V',
        example: '-10 V',
      }),
    ),
  },
  outputs: {
    gap: output(quantityField('length', 'Gap between probe and target', { symbol: 'g' }), 'g = |V|/S'),
    voltage: output(quantityField('voltage', 'Direct voltage at the output', { symbol: 'V' }), 'V = −S · g'),
  },
  holds:
    'within the linear range, on the steel of the scale factor; a straight line through zero, whose offset only the curve ' +
    'of this set can tell. The voltage is negative: the supply is −24 V, and a wider gap is further below zero.',
  sources: [clause(api670, '200 mV/mil'), convention],
  evaluate: ({ scaleFactor, gap, voltage }) => {
    if ((gap === undefined) === (voltage === undefined)) {
      throw new Refusal({
        read: gap === undefined ? 'neither gap nor voltage' : 'gap and voltage',
        expected: "one of 'gap' and 'voltage'; the other one is computed",
      });
    }
    if (gap !== undefined && gap < 0) throw new Refusal({ read: `gap=${gap} m`, expected: 'a gap of zero or more' });
    const g = gap ?? gapOfVoltage(scaleFactor, voltage!);
    return { gap: si('length', g), voltage: si('voltage', gapVoltage(scaleFactor, g)) };
  },
  doubts: ({ scaleFactor, gap, voltage }) => [
    ...reversed(voltage),
    ...bent(gapVoltage(scaleFactor, gap ?? gapOfVoltage(scaleFactor, voltage!))),
  ],
  example: { 'scale-factor': '7.87 mV/um', voltage: '-10 V' },
});

function reversed(voltage: number | undefined): readonly Finding[] {
  if (voltage === undefined || voltage <= 0) return [];
  return [
    finding({
      rule: 'proximity/positive-gap-voltage',
      weight: 'warns',
      at: 'proximity-gap/voltage',
      found: measured('voltage', voltage),
      limit: 'a voltage below zero',
      because: 'On a negative supply the gap voltage is negative; it was read by its size.',
      remedy: ['look whether the leads of the meter, or the polarity of the channel, are exchanged'],
      sources: [convention],
    }),
  ];
}

function bent(voltage: number): readonly Finding[] {
  if (voltage >= straight.low && voltage <= straight.high) return [];
  return [
    finding({
      rule: 'proximity/outside-straight-part',
      weight: 'warns',
      at: 'proximity-gap/voltage',
      found: measured('voltage', voltage),
      limit: said`${measured('voltage', straight.high)} to ${measured('voltage', straight.low)} on a supply of −24 V`,
      because: 'Near its supply and near zero the curve bends: the gap is not what the straight line says.',
      remedy: ['set the gap again', 'read the gap from the curve of this set'],
      sources: [clause(api670, 'usable voltages')],
    }),
  ];
}
