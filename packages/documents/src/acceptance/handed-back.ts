import {
  type HandedBack,
  type Judgement,
  type JudgementChange,
  type PointHandedBack,
  showDecibels,
  showMeasure,
} from '@soundpost/core';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';

/** Beyond this a margin says no more than plenty. */
const plenty = 60;

/** The design before and after what was measured took the place of what was predicted. */
export function handedBackBody({ verdict, points }: HandedBack, setting: Setting): Html {
  if (points.length === 0) {
    return html`<p>Nothing was identified that has a place in the design; its verdict stays: ${sign(verdict.before)}.</p>`;
  }
  const margin = (value: number) =>
    value >= plenty ? `over ${plenty} dB` : showDecibels(value, 1, setting.showing.decimal);
  return html`<p>What was measured takes the place of what was predicted, and the same rules judge again. The design as a whole: before ${sign(verdict.before)}, after ${sign(verdict.after)}.</p>
${table({
  caption: 'Points with measured values in their chain',
  columns: [
    { head: 'Point', cell: ({ at }: PointHandedBack) => named(at) },
    { head: 'Measured', cell: ({ facts }) => Object.keys(facts).map(inWords).join(', ') },
    { head: 'Before', kind: 'line', cell: ({ outcome }) => sign(outcome.before) },
    { head: 'Least margin', kind: 'measure', cell: (each) => margin(each.margin.before) },
    { head: 'After', kind: 'line', cell: ({ outcome }) => sign(outcome.after) },
    { head: 'Least margin', kind: 'measure', cell: (each) => margin(each.margin.after) },
  ],
  rows: points,
  folds: true,
})}
${points.map((each) => changeTable(each, setting))}`;
}

/** `mounted resonance` from `mountedResonance`. */
function inWords(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function changeTable({ at, changes }: PointHandedBack, setting: Setting): Html | undefined {
  if (changes.length === 0) return undefined;
  return table({
    caption: html`Judgements that changed at ${named(at)}`,
    columns: [
      { head: 'Target', cell: ({ target }: JudgementChange) => (target === undefined ? 'the chain' : named(target)) },
      { head: 'Judged', cell: (each) => showMeasure((each.after ?? each.before)!.what, setting.showing) },
      { head: 'Before', cell: ({ before }) => side(before, setting) },
      { head: 'After', cell: ({ after }) => side(after, setting) },
    ],
    rows: changes,
    folds: true,
  });
}

function side(judged: Judgement | undefined, { showing }: Setting): Piece {
  if (judged === undefined) return 'not judged';
  return html`${sign(judged.outcome)} ${showMeasure(judged.found, showing)}, limit ${showMeasure(judged.limit, showing)}`;
}
