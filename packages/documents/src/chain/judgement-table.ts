import {
  type Appraisal,
  appraisalRules,
  type Judgement,
  outcomes,
  type Policy,
  showDecibels,
  showMeasure,
  showQuantity,
} from '@soundpost/core';
import { explainedJudgement } from '../derivation/explained-judgement.ts';
import { opened } from '../derivation/opened.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { outcomeSign } from '../typesetting/verdict-shape.ts';

/** Every judgement of a chain, worst first, with found, limit, frequency and margin. */
export function judgementTable(appraisal: Appraisal, policy: Policy, setting: Setting): Html {
  const { showing } = setting;
  const opens = (each: Judgement, set: Piece) =>
    opened(set, () => explainedJudgement(each, appraisal, policy, showing), setting);
  const gravity = (each: Judgement) => outcomes.indexOf(each.outcome);
  const worstOf = (rule: string) => Math.min(...appraisal.judgements.filter((each) => each.rule === rule).map(gravity));
  const order = appraisalRules.map((rule) => rule.id);
  const rows = [...appraisal.judgements].sort(
    (a, b) =>
      worstOf(a.rule) - worstOf(b.rule) || order.indexOf(a.rule) - order.indexOf(b.rule) || gravity(a) - gravity(b),
  );
  const numberOf = (target: string) => appraisal.point.targets.findIndex((each) => each.name === target) + 1;
  return html`${table({
    caption: 'Judgements by rule, worst first; the margin is the distance from the limit, positive inside',
    group: (each) => appraisalRules.find((rule) => rule.id === each.rule)?.title ?? each.rule,
    columns: [
      { head: 'Outcome', kind: 'line', cell: (each: Judgement) => outcomeSign(each.outcome) },
      {
        head: 'Target',
        cell: (each) =>
          each.target === undefined ? 'the chain' : html`${numberOf(each.target)} ${named(each.target)}`,
      },
      {
        head: 'Found',
        cell: (each) => html`${showMeasure(each.what, showing)} ${opens(each, showMeasure(each.found, showing))}`,
      },
      { head: 'Limit', cell: (each) => showMeasure(each.limit, showing), opened: opens },
      {
        head: 'At',
        kind: 'measure',
        cell: (each) => (each.frequency === undefined ? '—' : showQuantity('frequency', each.frequency, showing)),
        opened: opens,
      },
      { head: 'Margin', kind: 'measure', cell: margin, opened: opens },
    ],
    rows,
    folds: true,
    empty: 'No rule had anything to judge.',
  })}${nearestRequirement(appraisal, setting)}`;
}

/** Rules do not tell a margin beyond this: it says no more than plenty. */
const plenty = 60;

function margin(each: Judgement): Piece {
  if (each.margin === undefined) return '—';
  return each.margin >= plenty ? `${plenty}.0 dB or more` : showDecibels(each.margin);
}

function nearestRequirement({ nearest }: Appraisal, { showing }: Setting): Html | undefined {
  if (nearest?.margin === undefined) return undefined;
  const target = nearest.target === undefined ? '' : `${nearest.target}: `;
  return html`<p>The requirement that would fail first: ${target}${showMeasure(nearest.what, showing)} ${showMeasure(nearest.found, showing)} against ${showMeasure(nearest.limit, showing)}, ${showDecibels(nearest.margin)} inside.</p>`;
}
