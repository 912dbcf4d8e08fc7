import { type DesignedPoint, pointLife, showClause, showLife } from '@soundpost/core';
import { type Html, html } from '../typesetting/html.ts';
import { unknown } from '../typesetting/setting.ts';

/** What the surroundings do to the life of the chosen chain: a range with its source, never one number. */
export function lifeFacts({ point, appraisal }: DesignedPoint): Html | undefined {
  const all = pointLife(point, appraisal?.prediction.chain);
  if (all.length === 0) return undefined;
  return html`<p>What these surroundings do to the life of the chain:</p><ul>${all.map(
    ({ effect, missing }) =>
      html`<li>${missing.length === 0 ? undefined : html`Cannot be told: ${unknown(missing)}. If so: `}${effect.part}, ${showLife(effect)}: ${effect.cause}; it shows as: ${effect.shows}. Source: ${effect.sources.map(showClause).join('; ')}.</li>`,
  )}</ul>`;
}
