import { type Finding, finding } from '../../finding/finding.ts';
import { measured, measuredLevel, said } from '../../finding/measure.ts';
import {
  choiceField,
  comparable,
  type Level,
  level,
  levelField,
  type Motion,
  motions,
  quantityField,
  Refusal,
  si,
} from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { loopPractice } from '../../source/loop-practice.ts';
import { namurNe43 } from '../../source/namur-ne-43.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import {
  faultCurrents,
  fullScale,
  liveZero,
  loopState,
  loopStates,
  measuringCurrents,
  tellsValue,
} from './loop-state.ts';

/** Current of a value on a 4-20 mA loop, in amperes, on the straight line: I = 4 mA + 16 mA·(x − x₀)/(x₁ − x₀). */
export function loopCurrent(value: number, rangeLow: number, rangeHigh: number): number {
  wide(rangeLow, rangeHigh);
  return liveZero + ((fullScale - liveZero) * (value - rangeLow)) / (rangeHigh - rangeLow);
}

/** Value of a loop current, in the unit of the range: the same line backwards. */
export function loopValue(current: number, rangeLow: number, rangeHigh: number): number {
  wide(rangeLow, rangeHigh);
  return rangeLow + ((current - liveZero) / (fullScale - liveZero)) * (rangeHigh - rangeLow);
}

/** What a transmitter really sends: it holds 3.8 and 20.5 mA where the line leads beyond. NAMUR NE 43. */
export function transmittedCurrent(value: number, rangeLow: number, rangeHigh: number): number {
  return Math.min(measuringCurrents.high, Math.max(measuringCurrents.low, loopCurrent(value, rangeLow, rangeHigh)));
}

function wide(rangeLow: number, rangeHigh: number): void {
  if (rangeHigh > rangeLow) return;
  throw new Refusal({ read: `${rangeLow}..${rangeHigh}`, expected: 'a range whose high end is above its low end' });
}

const states = clause(namurNe43, 'signal levels');
const amplitude = (meaning: string, symbol: string, example: string) =>
  levelField(motions, meaning, { symbol, example });

export const loopScaling = working({
  name: 'loop-scaling',
  title: 'Value and current of a 4-20 mA loop, and what the current says',
  inputs: {
    rangeLow: amplitude('Value at 4 mA', 'x_0', '0 mm/s rms'),
    rangeHigh: amplitude('Value at 20 mA', 'x_1', '25 mm/s rms'),
    value: optional(amplitude('Value to be sent; give this or the current', 'x', '3.175 mm/s rms')),
    current: optional(
      quantityField('current', 'Current that was read; give this or the value', { symbol: 'I', example: '9.44 mA' }),
    ),
  },
  outputs: {
    current: optionalOutput(
      quantityField('current', 'Current that is sent; not repeated where it was given', { symbol: 'I' }),
      'I = 4 mA + 16 mA · (x − x_0)/(x_1 − x_0), held at 3.8 mA and 20.5 mA',
    ),
    value: optionalOutput(
      amplitude('Value that is read from the current; none where the current tells none', 'x', '3.175 mm/s rms'),
      'x = x_0 + (x_1 − x_0) · (I − 4 mA)/16 mA',
    ),
    state: output(choiceField(loopStates, 'What the current says', { symbol: 'state' }), 'state = the NE 43 band of I'),
  },
  holds:
    'linear between 4 and 20 mA, one detector for range and value; a transmitter that keeps NE 43. Below 3.6 and above 21 mA is a fault and never a value.',
  sources: [clause(loopPractice, 'scaling'), states],
  evaluate: ({ rangeLow, rangeHigh, value, current }) => {
    comparable(rangeLow, rangeHigh);
    if ((value === undefined) === (current === undefined)) {
      throw new Refusal({
        read: value === undefined ? 'neither value nor current' : 'value and current',
        expected: "one of 'value' and 'current'; the other one is computed",
      });
    }
    if (value !== undefined) comparable(rangeLow, value);
    const [x0, x1] = [rangeLow.value, rangeHigh.value];
    const sent = current ?? transmittedCurrent(value!.value, x0, x1);
    const state = loopState(sent);
    return {
      current: current === undefined ? si('current', sent) : undefined,
      value: tellsValue(state) ? levelLike(rangeLow, loopValue(sent, x0, x1)) : undefined,
      state,
    };
  },
  doubts: ({ rangeLow, rangeHigh, value, current }) =>
    current === undefined ? held(rangeLow, rangeHigh, value!) : [...near(current), ...silent(current)],
  example: { 'range-low': '0 mm/s rms', 'range-high': '25 mm/s rms', value: '3.175 mm/s rms' },
});

function levelLike(like: Level<Motion>, value: number): Level<Motion> {
  return level(like.quantity, value, like.detector, like.band);
}

function held(rangeLow: Level<Motion>, rangeHigh: Level<Motion>, value: Level<Motion>): readonly Finding[] {
  const line = loopCurrent(value.value, rangeLow.value, rangeHigh.value);
  if (line <= measuringCurrents.high && line >= measuringCurrents.low) return [];
  const end = line > measuringCurrents.high ? measuringCurrents.high : measuringCurrents.low;
  return [
    finding({
      rule: 'loop/held-at-its-end',
      weight: 'warns',
      at: 'loop-scaling/value',
      found: said`${measuredLevel(value)}, which would be ${measured('current', line)}`,
      limit: said`${measuredLevel(levelLike(rangeLow, loopValue(end, rangeLow.value, rangeHigh.value)))}, which is ${measured('current', end)}`,
      because: 'The transmitter holds its current there: the receiver sees no difference beyond.',
      remedy: ['a transmitter of a wider range'],
      sources: [states],
    }),
  ];
}

/** A dead sensor may rest near 4 mA: no vibration and no sensor look alike within the usual zero error of 0.1 mA. */
function near(current: number): readonly Finding[] {
  if (current < measuringCurrents.low || current > liveZero + 1e-4) return [];
  return [
    finding({
      rule: 'loop/zero-or-dead',
      weight: 'notes',
      at: 'loop-scaling/current',
      found: measured('current', current),
      limit: said`more than ${measured('current', liveZero + 1e-4)} on a machine that runs`,
      because: 'Within 0.1 mA of the live zero a machine at rest, a zero error and a dead sensor look alike.',
      remedy: ['compare with the noise of the same machine when it runs'],
      sources: [clause(tradePractice, 'live zero')],
    }),
  ];
}

function silent(current: number): readonly Finding[] {
  const state = loopState(current);
  if (tellsValue(state)) return [];
  const fault = state === 'fault-low' || state === 'fault-high';
  return [
    finding({
      rule: fault ? 'loop/fault' : 'loop/not-usable',
      weight: 'warns',
      at: 'loop-scaling/current',
      found: said`${measured('current', current)}: ${state}`,
      limit: fault
        ? said`above ${measured('current', faultCurrents.low)} and below ${measured('current', faultCurrents.high)}`
        : said`${measured('current', measuringCurrents.low)} to ${measured('current', measuringCurrents.high)}`,
      because: fault
        ? 'The transmitter or its wiring has failed; no value is told, and zero vibration would be a false reading.'
        : 'Between the measuring band and the fault band nothing is told: keep the last value, or mark it uncertain.',
      remedy: ['treat it as a fault of the channel after about 4 s, not as a trip of the machine'],
      sources: [states],
    }),
  ];
}
