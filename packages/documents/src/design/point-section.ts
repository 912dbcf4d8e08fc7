import type { DesignedPoint, Plant } from '@soundpost/core';
import { settingsSection } from '../acquisition/settings-section.ts';
import { alarmSection, hasLoop, registerTable, windowTable } from '../alarm/alarm-section.ts';
import { loopSection } from '../alarm/loop-section.ts';
import { amplitudeChart } from '../chain/amplitude-chart.ts';
import { amplitudeTable } from '../chain/amplitude-table.ts';
import { biasDrawing } from '../chain/bias-drawing.ts';
import { biasTables } from '../chain/bias-table.ts';
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

/** A sheet of a measuring point, set only when it is asked for; nothing where the point has no such thing. */
export interface PointSheet {
  readonly name: string;
  readonly title: string;
  /** Whether the point has such a thing at all. */
  readonly present: boolean;
  body(): Html | undefined;
}

/** The sheets of one measuring point, from what it must capture to how sure its readings are; `id` is unique in the page. */
export function pointSheets(
  designed: DesignedPoint,
  plant: Plant,
  id: string,
  setting: Setting,
): readonly PointSheet[] {
  const { appraisal, alarms } = designed;
  const { showing } = setting;
  const drawn = (name: string, draw: (width: Width) => Drawing | undefined, caption: Piece): Html | undefined =>
    draw('wide') === undefined ? undefined : figure(`${id}-${name}`, (width) => draw(width)!, caption);
  const sheet = (name: string, title: string, body: () => Html | undefined, present = true): PointSheet => ({
    name,
    title,
    present,
    body: () => (present ? body() : undefined),
  });
  return [
    sheet(
      'demand',
      'What it must capture',
      () => html`${pointFacts(designed, setting)}${targetTable(designed, setting)}`,
    ),
    sheet('chart', 'Amplitude chart', () => chartWithTable(designed, id, setting)),
    sheet('chain', 'The chain and its judgements', () =>
      appraisal === undefined
        ? html`<p>No transducer and mount are chosen here, so nothing can be told of a chain.</p>`
        : html`${drawn('chain', (width) => chainDrawing(designed, showing, width), html`The chain as chosen: ${named(appraisal.prediction.chain.of, 200)}. ${outcomeSign(appraisal.outcome)} is the worst of its judgements.`)}${judgementTable(appraisal, plant.policy, setting)}${chainFacts(designed, setting)}`,
    ),
    sheet('candidates', 'Candidates', () => selectionMatrix(designed, plant, setting)),
    sheet('response', 'Response', () => drawn('response', (w) => responsePlot(designed, showing, w), responseCaption)),
    sheet('noise', 'Noise', () => {
      const plot = drawn('noise', (width) => noisePlot(designed, showing, width), noiseCaption);
      return plot === undefined ? undefined : html`${plot}${noiseTable(designed, setting)}`;
    }),
    sheet('bias', 'Bias and headroom', () => {
      const plot = drawn('bias', (width) => biasDrawing(designed, showing, width), biasCaption);
      const tables = biasTables(designed, setting);
      return plot === undefined && tables === undefined ? undefined : html`${plot}${tables}`;
    }),
    sheet('probes', 'Probes', () => probeSection(designed.probes!, setting), designed.probes !== undefined),
    sheet('area', 'Hazardous area', () => areaSection(designed.area!, setting), designed.area !== undefined),
    sheet(
      'limits',
      'Limits of this point',
      () => limitFacts(designed.limits!, designed.point.of, setting),
      designed.limits !== undefined,
    ),
    sheet('loop', 'The loop', () => loopSection(designed, id, setting), hasLoop(designed)),
    sheet(
      'alarms',
      'Alarms',
      () =>
        html`${alarmSection(designed, alarms!, setting)}${hasLoop(designed) ? undefined : registerTable(designed, alarms!, setting)}`,
      alarms !== undefined,
    ),
    sheet(
      'window',
      'Wanted motion',
      () => windowTable(designed, designed.window!, setting),
      designed.window !== undefined,
    ),
    sheet('acquisition', 'Acquisition', () => settingsSection(designed, setting)),
    sheet('uncertainty', 'Uncertainty of the readings', () => budgetSection(designed, id, setting)),
  ];
}

/** One measuring point, all its sheets one after the other. */
export function pointSection(designed: DesignedPoint, plant: Plant, id: string, setting: Setting): Section {
  return {
    title: html`Point ${named(designed.point.name)}`,
    body: '',
    newSheet: true,
    within: pointSheets(designed, plant, id, setting).flatMap(({ title, body }) => {
      const set = body();
      return set === undefined ? [] : [{ title, body: set }];
    }),
  };
}

const noiseCaption = 'Noise of each stage as it arrives at the end of the chain, told in the motion that is sensed.';

const biasCaption =
  'Where the output stands between ground and supply. Filled: the bias over its tolerance. Tinted: how far the signal may swing from there. Hatched: not to be had.';

/** Beside a chart of more targets than this its table would hang far below it. */
const mostBeside = 8;

function chartWithTable(designed: DesignedPoint, id: string, setting: Setting): Html {
  const drawn = (width: Width) => amplitudeChart(designed, setting.showing, width);
  const text = amplitudeTable(designed, setting);
  if (designed.point.targets.length <= mostBeside) return figure(`${id}-chart`, drawn, chartCaption, text);
  return html`${figure(`${id}-chart`, drawn, chartCaption)}${text}`;
}

const chartCaption = html`Every level stands where a sine of that level would, as velocity (rms); the same place is read as acceleration on the falling lines and as displacement on the rising ones. A bar or a box reaches from what must be seen (below) to what must be survived (above). The full line is the noise floor in one line of the spectrum; a dotted line is the noise of a whole band, told where the rule compares it with its target. The dash-dotted line is the ceiling: the lowest of all peaks that may not be passed, the gain of the resonance included. Dotted lines across a box are the boundaries of the evaluation zones it is held against. The strips below show where the response keeps a tolerance.`;

const responseCaption = html`Indicated over true motion with the nominal sensitivity set. Each tinted window is what a target allows, by its number; a ring marks where the rule found it worst.`;
