import type { DesignedPoint, Plant } from '@soundpost/core';
import { settingsSection } from '../acquisition/settings-section.ts';
import { alarmSection, hasLoop, registerTable, windowTable } from '../alarm/alarm-section.ts';
import { loopSection } from '../alarm/loop-section.ts';
import { amplitudeChart } from '../chain/amplitude-chart.ts';
import { amplitudeTable } from '../chain/amplitude-table.ts';
import { biasDrawing } from '../chain/bias-drawing.ts';
import { chainDrawing } from '../chain/chain-drawing.ts';
import { judgementTable } from '../chain/judgement-table.ts';
import { noisePlot } from '../chain/noise-plot.ts';
import { chainFacts, noiseTable } from '../chain/noise-table.ts';
import { probeSection } from '../chain/probe-section.ts';
import { responsePlot } from '../chain/response-plot.ts';
import { pointFacts, targetTable } from '../demand/target-table.ts';
import type { Drawing, Width } from '../drawing/drawing.ts';
import { figure } from '../drawing/figure.ts';
import { areaSection } from '../hazardous-area/area-section.ts';
import { limitFacts } from '../machine/element-table.ts';
import { selectionMatrix } from '../selection/selection-matrix.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import type { Setting } from '../typesetting/setting.ts';
import { outcomeSign } from '../typesetting/verdict-shape.ts';
import { budgetSection } from '../uncertainty/budget-section.ts';

/** One measuring point from what it must capture to how sure its readings are; `id` is unique in the document. */
export function pointSection(designed: DesignedPoint, plant: Plant, id: string, setting: Setting): Section {
  const { point, appraisal, alarms } = designed;
  const { showing } = setting;
  const drawn = (name: string, draw: (width: Width) => Drawing | undefined, caption: Piece): Html | undefined =>
    draw('wide') === undefined ? undefined : figure(`${id}-${name}`, (width) => draw(width)!, caption);
  const demand: Section = {
    title: 'What it must capture',
    body: html`${pointFacts(designed, setting)}${targetTable(designed, setting)}`,
  };
  const chart: Section = {
    title: 'Amplitude chart',
    body: chartWithTable(designed, id, setting),
  };
  const response = drawn('response', (width) => responsePlot(designed, showing, width), responseCaption);
  const noise = drawn(
    'noise',
    (width) => noisePlot(designed, showing, width),
    'Noise of each stage as it arrives at the end of the chain, told in the motion that is sensed.',
  );
  const bias = drawn(
    'bias',
    (width) => biasDrawing(designed, showing, width),
    'Where the output stands between ground and supply. Filled: the bias over its tolerance. Tinted: how far the signal may swing from there. Hatched: not to be had.',
  );
  const chain =
    appraisal === undefined
      ? html`<p>No transducer and mount are chosen here, so nothing can be told of a chain.</p>`
      : html`${drawn('chain', (width) => chainDrawing(designed, showing, width), html`The chain as chosen: ${named(appraisal.prediction.chain.of, 200)}. ${outcomeSign(appraisal.outcome)} is the worst of its judgements.`)}${judgementTable(appraisal, setting)}${chainFacts(designed, setting)}`;
  const parts: readonly (Section | undefined)[] = [
    demand,
    chart,
    { title: 'The chain and its judgements', body: chain },
    { title: 'Candidates', body: selectionMatrix(designed, plant, setting) },
    response === undefined ? undefined : { title: 'Response', body: response },
    noise === undefined ? undefined : { title: 'Noise', body: html`${noise}${noiseTable(designed, setting)}` },
    bias === undefined ? undefined : { title: 'Bias and headroom', body: bias },
    designed.probes === undefined ? undefined : { title: 'Probes', body: probeSection(designed.probes, setting) },
    designed.area === undefined ? undefined : { title: 'Hazardous area', body: areaSection(designed.area, setting) },
    designed.limits === undefined
      ? undefined
      : { title: 'Limits of this point', body: limitFacts(designed.limits, setting) },
    hasLoop(designed) ? { title: 'The loop', body: loopSection(designed, id, setting) } : undefined,
    alarms === undefined
      ? undefined
      : {
          title: 'Alarms',
          body: html`${alarmSection(alarms, point.of, setting)}${hasLoop(designed) ? undefined : registerTable(alarms, setting)}`,
        },
    designed.window === undefined ? undefined : { title: 'Wanted motion', body: windowTable(designed.window, setting) },
    { title: 'Acquisition', body: settingsSection(designed, setting) },
    { title: 'Uncertainty of the readings', body: budgetSection(designed, setting) },
  ];
  return {
    title: html`Point ${named(point.name)}`,
    body: '',
    newSheet: true,
    within: parts.flatMap((each) => each ?? []),
  };
}

/** Beside a chart of more targets than this its table would hang far below it. */
const mostBeside = 8;

function chartWithTable(designed: DesignedPoint, id: string, setting: Setting): Html {
  const drawn = (width: Width) => amplitudeChart(designed, setting.showing, width);
  const text = amplitudeTable(designed, setting);
  if (designed.point.targets.length <= mostBeside) return figure(`${id}-chart`, drawn, chartCaption, text);
  return html`${figure(`${id}-chart`, drawn, chartCaption)}${text}`;
}

const chartCaption = html`Every level stands where a sine of that level would, as velocity (rms); the same place is read as acceleration on the falling lines and as displacement on the rising ones. A bar or a box reaches from what must be seen (below) to what must be survived (above). The full line is the noise floor in one line of the spectrum; a dotted line is the noise of a whole band, told where the rule compares it with its target. The dash-dotted line is the ceiling: the lowest of all peaks that may not be passed, the gain of the resonance included. The strips below show where the response keeps a tolerance.`;

const responseCaption = html`Indicated over true motion with the nominal sensitivity set. Each tinted window is what a target allows, by its number; a ring marks where the rule found it worst.`;
