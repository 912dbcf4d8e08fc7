import type { Design, DesignedPoint, Missing, Target } from '@soundpost/core';
import { showMeasure } from '@soundpost/core';
import { sourcesCited } from '../source/sources-cited.ts';
import { statedShown } from '../typesetting/answers.ts';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { missingOf } from '../uncertainty/budget-section.ts';
import { allStatedValues, type StatedValue } from './stated-values.ts';

/** What nobody may read into the verdict: what is open, what was assumed, what was not looked at, what was not read. */
export function notProven(design: Design, setting: Setting): readonly Section[] {
  return [
    { title: 'Not known', body: notKnown(design, setting) },
    { title: 'Not asked for: what the machine suggests', body: notAskedFor(design) },
    { title: 'Assumed', body: assumed(design, setting) },
    { title: 'Not looked at', body: notLookedAt(design) },
    { title: 'Not read', body: notRead(design) },
  ];
}

function notKnown(design: Design, setting: Setting): Html {
  const questions = design.findings.filter((each) => each.weight === 'question' && each.asks !== undefined);
  const asked = questions.map(
    (each) => html`<li>${named(each.at)}: ${showMeasure(each.asks ?? '', setting.showing)}</li>`,
  );
  const unknowns = distinct([
    ...design.machines.flatMap((machine) => machine.points.flatMap(unknownAt)),
    ...design.machines.flatMap(({ frequencies }) =>
      frequencies.rows.flatMap(({ line, range }) =>
        range.known ? [] : range.missing.map((each) => ({ ...each, hides: `the line ${line.name}` })),
      ),
    ),
  ]);
  const sheets = allStatedValues(design).filter(({ entry }) => !entry.known);
  if (asked.length + unknowns.length + sheets.length === 0) {
    return html`<p>No question is open, and nothing that a rule, a budget or a set point asked for is unknown.</p>`;
  }
  return html`${asked.length === 0 ? undefined : html`<p>Questions:</p><ul>${asked}</ul>`}
${
  unknowns.length === 0
    ? undefined
    : table({
        caption: 'Unknown, and what cannot be told for want of it',
        columns: [
          { head: 'Unknown', cell: (each: Unknown) => html`${each.what} of ${named(each.of)}` },
          {
            head: 'Cannot be told',
            cell: (each) =>
              joined(
                each.hides.map((hidden) => named(hidden, 200)),
                '; ',
              ),
          },
        ],
        rows: unknowns,
        folds: true,
      })
}
${sheets.length === 0 ? undefined : html`<p>Stated as unknown on a sheet:</p><ul>${sheets.map((each) => html`<li>${each.what} of ${named(each.of)}: ${statedShown(each.entry, each.field, setting)}</li>`)}</ul>`}`;
}

interface Unknown extends Missing {
  readonly hides: readonly string[];
}

/** Everything unknown at a point, with what it stands in the way of. */
function unknownAt({ point, appraisal, budgets, alarms }: DesignedPoint): readonly (Missing & { hides: string })[] {
  const hiding = (missing: readonly Missing[], hides: string) => missing.map((each) => ({ ...each, hides }));
  const ofTarget = (target: Target) =>
    [target.band, target.smallest, target.largest, target.tolerance].flatMap((each) =>
      each.known ? [] : hiding(each.missing, `target ${target.name} of ${point.of}`),
    );
  return [
    ...point.targets.flatMap(ofTarget),
    ...(appraisal?.judgements ?? []).flatMap((each) =>
      hiding(each.missing ?? [], `${showMeasure(each.what)} of ${each.target ?? 'the chain'} at ${point.of}`),
    ),
    ...hiding(missingOf(budgets), `uncertainty of the readings at ${point.of}`),
    ...(alarms?.register ?? []).flatMap((row) =>
      [row.level, row.current, row.counts].flatMap((each) =>
        each === undefined || each.known ? [] : hiding(each.missing, `${row.name} of ${point.of}`),
      ),
    ),
  ];
}

function distinct(all: readonly (Missing & { hides: string })[]): readonly Unknown[] {
  const found = new Map<string, { of: string; what: string; hides: string[] }>();
  for (const { of, what, hides } of all) {
    const before = found.get(`${of}\n${what}`);
    if (before === undefined) found.set(`${of}\n${what}`, { of, what, hides: [hides] });
    else if (!before.hides.includes(hides)) before.hides.push(hides);
  }
  return [...found.values()];
}

/** Targets that elements of the machine suggest and nobody stated: no chain was held against them. */
function notAskedFor(design: Design): Html {
  const rows = design.machines.flatMap((machine) => machine.points.filter((each) => each.proposals.length > 0));
  return html`<p>A target nobody stated is covered by nothing in this report, whatever the chain might show.</p>
${table({
  columns: [
    { head: 'Point', cell: ({ point }: DesignedPoint) => named(point.of) },
    {
      head: 'Suggested by the machine and not asked for',
      cell: ({ proposals }): Piece =>
        joined(
          proposals.map((each) => html`${named(each.name)} (${each.cause})`),
          '; ',
        ),
    },
  ],
  rows,
  folds: true,
  empty: 'Everything the elements of the machines suggest is asked for.',
})}`;
}

/** What every prediction here takes for granted, whatever the parts. */
export const ofEveryModel = [
  'The motion under the transducer is the motion that matters: the path from the fault to the surface is not part of the chain.',
  'The chain is linear up to its ceilings, and in one direction; motion across it enters the uncertainty only.',
  'The worst peak adds all largest levels and all disturbances as if they met in phase. A burst or a disturbance with a band is lifted by the rms of the gain over its band.',
  'Noise of the stages is independent and added as squares; hum, ground loops and noise picked up by the cable are none of it.',
  'Frequencies are kinematic; slip is a range beside them, not a correction.',
] as const;

function assumed(design: Design, setting: Setting): Html {
  const transducers = [
    ...new Set(
      design.machines.flatMap((machine) =>
        machine.points.flatMap((point) => point.appraisal?.prediction.chain.transducer.assumptions ?? []),
      ),
    ),
  ];
  const lines = design.machines.flatMap(({ stated, frequencies }) =>
    frequencies.rows.flatMap(({ line }) =>
      line.assumed.length === 0
        ? []
        : [html`<li>${named(`${stated.name}/${line.name}`)}: ${line.assumed.join(', ')}</li>`],
    ),
  );
  const values = allStatedValues(design);
  const guessed = values.filter(({ entry }) => entry.known && entry.status === 'assumed');
  const silent = values.filter(({ entry }) => entry.known && entry.status === undefined).length;
  return html`<p>By the models:</p><ul>${[...ofEveryModel, ...transducers].map((each) => html`<li>${each}</li>`)}${lines}</ul>
<p>By whoever stated the values:</p>
${table({
  columns: [
    { head: 'Assumed', cell: ({ of, what }: StatedValue) => html`${what} of ${named(of)}` },
    { head: 'Value', cell: ({ entry, field }) => statedShown(entry, field, setting) },
    { head: 'Because', cell: ({ entry }) => (entry.known ? (entry.source ?? 'not said') : '') },
  ],
  rows: guessed,
  folds: true,
  empty: 'No value is marked as assumed.',
})}
<p>${silent} of the ${values.length} values on the sheets do not say how they are known; they are taken as they stand.</p>`;
}

function notLookedAt({ machines }: Design): Html {
  const points = machines.flatMap((machine) => machine.points);
  const areas = points.some((point) => point.area !== undefined);
  const wired = points.some((point) => point.stated.wiring !== undefined);
  return html`<ul>
<li>No recording was compared: the chain is predicted, not measured. What is never proven on the plant may be wrong on the plant.</li>
<li>The installation as fitted: spot face, torque, polarity, the route of the cable, the channel at its other end${wired ? ', screens and earths otherwise than they are stated' : ', screens and earth points, of which nothing is stated'}.</li>
<li>${areas ? 'Hazardous areas beyond the comparison of the certificate values that were entered: classification, condition, inspection.' : 'Hazardous areas: no point is stated to lie in one, and no certificate was compared.'}</li>
<li>Whether the targets are the right ones, early enough and complete: that is for those who know the machine to sign.</li>
<li>Delay, voting, inhibition and the way from a set point to whoever acts on it, beyond what is stated of them.</li>
</ul>`;
}

function notRead(design: Design): Html {
  const rows = sourcesCited(design).filter(({ how }) => how !== 'read' && how !== 'computed here');
  return html`<p>Numbers and rules from these sources are known otherwise than from the text itself. Whoever signs should hold them against a licensed copy.</p>
${table({
  columns: [
    { head: 'Source', cell: ({ source }) => source.title },
    { head: 'How known, at worst', kind: 'line', cell: ({ how }) => how },
  ],
  rows,
  folds: true,
  empty: 'Every source cited was read.',
})}`;
}
