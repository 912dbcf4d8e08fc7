import {
  type DesignedPoint,
  faultCurrents,
  fullScale,
  type LoopState,
  liveZero,
  loopStates,
  measuringCurrents,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { figure } from '../drawing/figure.ts';
import { quantityAnswered } from '../typesetting/answers.ts';
import { type Html, html } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { registerTable } from './alarm-section.ts';
import { explainedLoopState } from './explained-alarm.ts';
import { explainedLoad } from './explained-loop-load.ts';
import { loopScaleDrawing } from './loop-scale.ts';

/** What each state of the current means, and what whoever reads it must do. */
const meaning: Readonly<Record<LoopState, string>> = {
  'fault-low': 'the sensor tells its own failure, or the loop is open',
  'not-usable-low': 'tells nothing: keep the last value, or mark it uncertain',
  'under-range': 'a value below the range',
  measuring: 'a value within the range',
  'over-range': 'a value above the range',
  'not-usable-high': 'tells nothing: keep the last value, or mark it uncertain',
  'fault-high': 'the sensor tells its own failure, or the loop is shorted',
};

/** From where to where each state reaches, in amperes. */
const reach: Readonly<Record<LoopState, string>> = {
  'fault-low': `at or below ${mA(faultCurrents.low)}`,
  'not-usable-low': `above ${mA(faultCurrents.low)}, below ${mA(measuringCurrents.low)}`,
  'under-range': `${mA(measuringCurrents.low)} to ${mA(liveZero)}`,
  measuring: `${mA(liveZero)} to ${mA(fullScale)}`,
  'over-range': `above ${mA(fullScale)}, to ${mA(measuringCurrents.high)}`,
  'not-usable-high': `above ${mA(measuringCurrents.high)}, below ${mA(faultCurrents.high)}`,
  'fault-high': `at or above ${mA(faultCurrents.high)}`,
};

function mA(amperes: number): string {
  return `${showNumber(amperes * 1000)} mA`;
}

/** The loop of a point: its scale, its register, its load against what is allowed, and what each current means. */
export function loopSection(designed: DesignedPoint, id: string, setting: Setting): Html | undefined {
  const loop = designed.appraisal?.prediction.loop;
  if (loop === undefined) return undefined;
  const { showing } = setting;
  const load = (of: 'resistance' | 'largestResistance' | 'spare') =>
    opened(
      quantityAnswered(of === 'spare' ? 'voltage' : 'resistance', loop[of], setting),
      explainedLoad(designed, of, showing),
      setting,
    );
  const failure = showQuantity('current', loop.failureCurrent, showing);
  const drawing = loopScaleDrawing(designed, showing, 'wide');
  return html`
${drawing === undefined ? undefined : figure(`${id}-loop`, (width) => loopScaleDrawing(designed, showing, width)!, 'The loop as a scale of current. Filled: a value is told. White: nothing is told. Hatched: the sensor tells its own failure (NAMUR NE 43).')}
${designed.alarms === undefined ? html`<p>No alarm is stated here, so no set point stands on the loop.</p>` : registerTable(designed, designed.alarms, setting)}
<h4>Load of the loop</h4>
<dl class="facts"><dt>resistance in the loop</dt><dd>${load('resistance')}</dd>
<dt>allowed at most</dt><dd>${load('largestResistance')}</dd>
<dt>voltage to spare</dt><dd>${load('spare')}, at ${failure} and the lowest supply voltage</dd></dl>
${table({
  caption: 'What a current means (NAMUR NE 43); a dead loop never reads as a quiet machine',
  columns: [
    {
      head: 'Current',
      kind: 'line',
      cell: (state: LoopState) =>
        opened(reach[state], explainedLoopState(state.replaceAll('-', ' '), reach[state], showing), setting),
    },
    { head: 'State', kind: 'line', cell: (state) => state.replaceAll('-', ' ') },
    { head: 'Meaning', cell: (state) => meaning[state] },
  ],
  rows: loopStates,
  folds: true,
})}`;
}
