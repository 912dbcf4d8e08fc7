import {
  type Cell,
  cells,
  chainCell,
  type DesignedPoint,
  type Plant,
  pointShortlist,
  reason,
  type ShortlistRow,
  showDecibels,
} from '@soundpost/core';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { type Column, table } from '../typesetting/table.ts';
import { outcomeSign } from '../typesetting/verdict-shape.ts';

/** More candidates than this are a list nobody reads; how many follow is said. */
const shownAtOnce = 12;

/** Every candidate of the point against its targets: verdict and margin in each cell, and below it why. */
export function selectionMatrix(designed: DesignedPoint, plant: Plant, setting: Setting): Html {
  const all = pointShortlist(plant, designed);
  if (all.length === 0) return html`<p>Nothing is stated here with which candidates could be compared.</p>`;
  const rows = all.filter((row, index) => index < shownAtOnce || isChosen(row, designed));
  const targets: readonly Column<ShortlistRow>[] = designed.point.targets.map((_, index) => ({
    head: `Target ${index + 1}`,
    cell: (row) => verdictAndMargin(cells(row.appraisal)[index]!),
  }));
  const matrix = table({
    caption: 'Candidates against targets, best first: the judgement that decides, and its margin from the limit',
    columns: [
      { head: 'Candidate', cell: (row: ShortlistRow) => candidate(row, designed) },
      ...targets,
      { head: 'The chain as a whole', cell: (row) => verdictAndMargin(chainCell(row.appraisal)) },
      { head: 'Reason', cell: (row) => why(row, setting) },
    ],
    rows,
    folds: true,
  });
  const left = all.length - rows.length;
  return html`${matrix}${left === 0 ? undefined : html`<p class="note">Of ${all.length} candidates the ${left} that rank lower are left out here.</p>`}`;
}

function isChosen({ transducer, mount }: ShortlistRow, { stated: { chosen } }: DesignedPoint): boolean {
  return chosen?.transducer.name === transducer.name && chosen.mount.name === mount.name;
}

function candidate(row: ShortlistRow, designed: DesignedPoint): Piece {
  return html`${named(row.transducer.name)} on ${named(row.mount.name)}${isChosen(row, designed) ? ', chosen' : undefined}`;
}

function verdictAndMargin({ outcome, decides }: Cell): Piece {
  if (decides === undefined) return 'not judged';
  const margin =
    decides.margin === undefined ? undefined : html` <span class="line">${showDecibels(decides.margin)}</span>`;
  return html`${outcomeSign(outcome)}${margin}`;
}

/** What stands against the candidate, each said once; of one that meets everything, what would fail first. */
function why({ appraisal }: ShortlistRow, { showing }: Setting): Piece {
  const deciding = [...cells(appraisal), chainCell(appraisal)].flatMap(({ outcome, decides }) =>
    decides === undefined || outcome === 'meets' ? [] : [decides],
  );
  const reasons = [...new Set(deciding.map((each) => reason(each, showing)))];
  if (reasons.length > 0) return joined(reasons, '; ');
  const { nearest } = appraisal;
  if (nearest === undefined) return '—';
  return `would fail first: ${reason(nearest, showing)}`;
}
