import {
  type DesignedPoint,
  type Judgement,
  type Level,
  type Showing,
  showDecibels,
  showLevel,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';
import { type AmplitudeContent, amplitudeContent, type TargetMark } from './amplitude-content.ts';
import { usableBands, usableWords } from './usable-band.ts';

/** The amplitude chart as text: each mark with the floor it stands over, and everything that lies outside. */
export function amplitudeTable(designed: DesignedPoint, setting: Setting): Html {
  const content = amplitudeContent(designed);
  const { showing } = setting;
  const judgements = designed.appraisal?.judgements ?? [];
  const marks = table({
    caption: 'The chart as a table',
    columns: [
      { head: 'Target', cell: ({ number, target }: TargetMark) => html`${number}\u00a0${named(target.name)}` },
      { head: 'To be seen', cell: ({ smallest }) => levelShown(smallest, showing) },
      { head: 'Over noise', cell: (mark) => noiseShown(designed, mark, showing) },
      { head: 'To be survived', cell: ({ largest }) => levelShown(largest, showing) },
    ],
    rows: content.marks,
    folds: true,
    empty: 'No target has a place on the chart.',
  });
  return html`${marks}${ceilingLines(judgements, showing)}${outside(designed, content, showing)}`;
}

function levelShown(shown: Level | undefined, showing: Showing): string {
  return shown === undefined ? 'unknown' : held(showLevel(withoutBand(shown), showing));
}

/** Number and unit stay in one line. */
function held(text: string): string {
  return text.replace(' ', '\u00a0');
}

/** All noise is an rms; the zero error of a detecting sensor is told in its own detector. */
function noiseShown({ appraisal }: DesignedPoint, { noise, over }: TargetMark, showing: Showing): string {
  if (noise === undefined) return '—';
  const detecting = appraisal?.prediction.chain.transducer.oneNumber !== undefined;
  const shown = { ...withoutBand(noise), detector: detecting ? noise.detector : ('rms' as const) };
  const by = over === undefined ? '' : `, by ${held(showDecibels(over))}`;
  return `${held(showLevel(shown, { ...showing, digits: 3 }))}${by}`;
}

function withoutBand({ quantity, value, detector }: Level): Level {
  return { quantity, value, detector };
}

/** Each ceiling with the worst peak that reaches it. */
function ceilingLines(judgements: readonly Judgement[], showing: Showing): Html | undefined {
  const overload = judgements.filter((each) => each.rule === 'chain/overload' || each.rule === 'chain/loop-range');
  if (overload.length === 0) return undefined;
  const lines = overload.map(
    (each) =>
      html`<li>${showMeasure(each.what, showing)}: ${showMeasure(each.found, showing)}, limit ${showMeasure(each.limit, showing)}${each.margin === undefined ? undefined : `, ${showDecibels(each.margin)} apart`}</li>`,
  );
  return html`<h4>Against the ceiling</h4><ul>${lines}</ul>`;
}

const rulesOfTheChart: ReadonlySet<string> = new Set([
  'chain/signal-to-noise',
  'chain/zero-error',
  'chain/overload',
  'chain/loop-range',
  'chain/response',
  'chain/usable-frequency',
  'chain/one-number',
]);

/** What lies outside floor, ceiling or usable band, by name; or that nothing was judged to. */
function outside(designed: DesignedPoint, { notDrawn }: AmplitudeContent, showing: Showing): Html {
  const usable = usableBands(designed, amplitudeContent(designed).frequencies).map((band) =>
    usableWords(band, showing),
  );
  const judgements = (designed.appraisal?.judgements ?? []).filter((each) => rulesOfTheChart.has(each.rule));
  const out = judgements.filter((each) => each.outcome === 'fails' || each.outcome === 'cannot tell');
  const lines = out.map(
    (each) =>
      html`<li>${sign(each.outcome)} ${each.target === undefined ? undefined : html`${named(each.target)}: `}${showMeasure(each.what, showing)} ${showMeasure(each.found, showing)}${each.frequency === undefined ? undefined : ` at ${showQuantity('frequency', each.frequency, showing)}`}, limit ${showMeasure(each.limit, showing)}</li>`,
  );
  const missing = notDrawn.map(({ name, why }) => html`<li>${named(name)} is not drawn: ${why}</li>`);
  const none =
    judgements.length === 0
      ? 'No chain was judged here.'
      : `None of the ${judgements.length} judgements about floor, ceiling and band finds a target outside.`;
  return html`<h4>Outside</h4>${out.length === 0 ? html`<p>${none}</p>` : html`<ul>${lines}</ul>`}
${missing.length === 0 ? undefined : html`<ul>${missing}</ul>`}
${usable.length === 0 ? undefined : html`<p>${joined(usable, '; ')}.</p>`}`;
}
