import { bareNumber, measuredLevel, said } from '../../finding/measure.ts';
import { asSineDetector, valueIfStated } from '../../quantity/index.ts';
import { iso80000x3 } from '../../source/iso-80000-3.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { RoleSpeeds } from '../element.ts';
import type { ScreenExciterSheet } from '../screen-exciter.ts';
import { oneElement } from './example-trains.ts';
import { machineRule } from './rule.ts';

const gravity = 9.80665;

/** Peak acceleration of screens, feeders and conveyors in g. Common practice, no source. */
const usualThrow = { low: 2.5, high: 8 };

const screen = (stroke: string) => ({
  ...oneElement({ kind: 'screen-exciter', on: 'fan', stroke }),
  operation: { shaft: 'fan', speed: '920 r/min' },
});

export const throwPlausible = machineRule<[ScreenExciterSheet, RoleSpeeds<'on'>]>({
  id: 'machine/throw-plausible',
  title: 'Stroke and speed of a vibrating screen give a throw that carries material',
  prose:
    'Stroke and speed together give the peak acceleration. Below about 2.5 g nothing is thrown and above about 8 g no body lasts: then an amplitude was typed as peak-to-peak, or the speed is that of the motor before a belt.',
  sources: [
    clause(tradePractice, 'throw of vibrating screens'),
    clause(iso80000x3, 'standard acceleration of free fall'),
  ],
  finds(sheet, speeds) {
    const stroke = valueIfStated(sheet.values.stroke);
    if (stroke === undefined || !speeds.on.known) return [];
    const amplitude = asSineDetector(stroke, 'peak').value;
    const speed = speeds.on.value.high;
    const inG = ((2 * Math.PI * speed) ** 2 * amplitude) / gravity;
    if (inG >= usualThrow.low && inG <= usualThrow.high) return [];
    const doubled = inG * 2 >= usualThrow.low && inG < usualThrow.low;
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${measuredLevel(stroke)} at ${bareNumber(speed)} Hz is ${bareNumber(inG, 3)} g peak`,
        limit: said`${usualThrow.low} to ${usualThrow.high} g peak`,
        because: 'Every range, ceiling and set point of this machine follows from its stroke and speed.',
        remedy: [
          ...(doubled ? ['state the double, if the value is an amplitude and was written as peak-to-peak'] : []),
          'measure the speed of the exciter itself, behind any belt',
        ],
        asks: doubled
          ? 'Is the stroke stated as amplitude, half of peak-to-peak?'
          : 'Are stroke and speed those of the exciter at duty?',
      },
    ];
  },
  valid: screen('9 mm pp'),
  invalid: screen('4.5 mm pp'),
});
