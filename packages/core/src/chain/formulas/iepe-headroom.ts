import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import { type Level, level, levelField, quantityField, Refusal, si, spanField } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/** How far the signal of a constant-current sensor can go from its bias, up and down, in volts. */
export interface Swing {
  readonly top: number;
  readonly bottom: number;
}

/** What limits the swing, all in volts: `bias` over its tolerance, `seriesDrop` = supply current · series resistance. */
export interface SwingLimits {
  readonly compliance: number;
  readonly sourceDrop: number;
  readonly seriesDrop: number;
  readonly bias: { readonly low: number; readonly high: number };
  readonly saturation: number;
}

/**
 * Swing over the whole bias tolerance: top = V_c − V_d − I·R − b_high, bottom = b_low − V_sat. Negative where the
 * supply cannot even hold the bias.
 */
export function swing({ compliance, sourceDrop, seriesDrop, bias, saturation }: SwingLimits): Swing {
  return { top: compliance - sourceDrop - seriesDrop - bias.high, bottom: bias.low - saturation };
}

/** Peak that is measured without clipping: min(range, smaller swing / S); zero where there is no swing at all. */
export function overloadLimit(range: number, available: Swing, sensitivity: number): number {
  aboveZero({ sensitivity });
  return Math.max(0, Math.min(range, Math.min(available.top, available.bottom) / sensitivity));
}

const practice = clause(iepePractice, 'bias, compliance and saturation');

export const iepeHeadroom = working({
  name: 'iepe-headroom',
  title: 'Headroom of a constant-current sensor between supply and ground',
  inputs: {
    compliance: quantityField('voltage', 'Voltage the supply can give, at its lowest', {
      symbol: 'V_c',
      example: '24 V',
    }),
    sourceDrop: quantityField('voltage', 'Voltage the current source itself needs', { symbol: 'V_d', example: '1 V' }),
    bias: spanField('voltage', 'Bias of the sensor, over its tolerance', { symbol: 'bias', example: '10..14 V' }),
    saturation: quantityField('voltage', 'Lowest voltage the sensor output reaches', {
      symbol: 'V_sat',
      example: '2 V',
    }),
    seriesResistance: optional(
      quantityField('resistance', 'Resistance in series: barrier and cores', { symbol: 'R', example: '340 ohm' }),
    ),
    supplyCurrent: optional(
      quantityField('current', 'Constant current of the supply; needed with a series resistance', {
        symbol: 'I_s',
        example: '4 mA',
      }),
    ),
    sensitivity: quantityField('voltage per acceleration', 'Sensitivity', { symbol: 'S', example: '100 mV/g' }),
    range: levelField(['acceleration'], 'Range of the sensor itself, as a peak', {
      symbol: 'a_r',
      example: '80 g peak',
    }),
  },
  outputs: {
    seriesDrop: output(
      quantityField('voltage', 'Taken from the supply by the series resistance; zero without one', { symbol: 'V_R' }),
      'V_R = I_s · R, zero without a series resistance',
    ),
    topSwing: output(
      quantityField('voltage', 'From the highest bias up to the supply', { symbol: 'V_top' }),
      'V_top = V_c − V_d − V_R − the highest of bias',
    ),
    bottomSwing: output(
      quantityField('voltage', 'From the lowest bias down to saturation', { symbol: 'V_bottom' }),
      'V_bottom = the lowest of bias − V_sat',
    ),
    overload: output(
      levelField(['acceleration'], 'Peak that is measured without clipping', { symbol: 'a_o', example: '80 g peak' }),
      'a_o = min(a_r, min(V_top, V_bottom)/S)',
    ),
  },
  holds:
    'peak at the sensor after its own response: what a resonance adds counts too. The input range of the instrument stands beside it.',
  sources: [practice],
  evaluate: ({ compliance, sourceDrop, bias, saturation, seriesResistance, supplyCurrent, sensitivity, range }) => {
    if (seriesResistance !== undefined && supplyCurrent === undefined) {
      throw new Refusal({
        read: 'series-resistance without supply-current',
        expected: "'supply-current' beside it: the voltage that the resistance takes is current times resistance",
      });
    }
    peakOnly(range);
    const seriesDrop = (seriesResistance ?? 0) * (supplyCurrent ?? 0);
    const available = swing({ compliance, sourceDrop, seriesDrop, bias, saturation });
    return {
      seriesDrop: si('voltage', seriesDrop),
      topSwing: si('voltage', available.top),
      bottomSwing: si('voltage', available.bottom),
      overload: level('acceleration', overloadLimit(range.value, available, sensitivity), 'peak'),
    };
  },
  doubts: ({ compliance, sourceDrop, bias, saturation, seriesResistance, supplyCurrent }) => {
    const seriesDrop = (seriesResistance ?? 0) * (supplyCurrent ?? 0);
    return noSwing(swing({ compliance, sourceDrop, seriesDrop, bias, saturation }));
  },
  example: {
    compliance: '24 V',
    'source-drop': '1 V',
    bias: '10..14 V',
    saturation: '2 V',
    'series-resistance': '340 ohm',
    'supply-current': '4 mA',
    sensitivity: '100 mV/g',
    range: '80 g peak',
  },
});

function peakOnly(range: Level): void {
  if (range.detector === 'peak') return;
  throw new Refusal({
    read: `a range as ${range.detector}`,
    expected: "the range as a peak, such as '80 g peak'",
    suggestion: 'Clipping is a matter of the highest instant; a peak follows from another detector only for a sine.',
  });
}

function noSwing(available: Swing): readonly Finding[] {
  const smaller = Math.min(available.top, available.bottom);
  if (smaller > 0) return [];
  return [
    finding({
      rule: 'chain/no-swing',
      weight: 'blocks-issue',
      at: available.top <= available.bottom ? 'iepe-headroom/compliance' : 'iepe-headroom/saturation',
      found: said`a swing of ${measured('voltage', smaller)}`,
      limit: 'more than 0 V',
      because: 'The supply cannot hold the bias over its whole tolerance: the sensor would clip without any vibration.',
      remedy: ['a supply of higher compliance', 'less series resistance', 'a sensor of another bias'],
      sources: [practice],
    }),
  ];
}
