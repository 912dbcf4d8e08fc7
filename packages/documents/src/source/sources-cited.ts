import {
  type Acquaintance,
  appraisalRules,
  arrangementKindOf,
  type Clause,
  type Design,
  jcgm100,
  jcgm101,
  kindOf,
  machinePositions,
  pointLife,
  type Source,
} from '@soundpost/core';
import { chainParts } from '../chain/chain-parts.ts';
import { type Html, html, joined } from '../typesetting/html.ts';
import { table } from '../typesetting/table.ts';

/** A source with every place of it that the design leans on. */
export interface CitedSource {
  readonly source: Source;
  readonly places: readonly { readonly place: string; readonly how: Acquaintance }[];
  /** The least certain way in which anything of it is known. */
  readonly how: Acquaintance;
}

const fromBestToWorst: readonly Acquaintance[] = [
  'read',
  'computed here',
  'second-hand',
  'from memory',
  'common practice, no source',
];

/** Everything a design leans on, each source once, in the order of their titles. */
export function sourcesCited(design: Design): readonly CitedSource[] {
  const bySource = new Map<string, Clause[]>();
  for (const cited of clausesOf(design)) {
    const of = bySource.get(cited.source.id) ?? [];
    bySource.set(cited.source.id, [...of, cited]);
  }
  return [...bySource.values()].map(citedSource).sort((a, b) => (a.source.title < b.source.title ? -1 : 1));
}

function citedSource(clauses: readonly Clause[]): CitedSource {
  const { source } = clauses[0]!;
  const all = clauses.map(({ place, how }) => ({ place: place ?? '', how: how ?? source.how }));
  const places = all.filter(
    (each, index) => all.findIndex((other) => other.place === each.place && other.how === each.how) === index,
  );
  const worst = Math.max(...places.map((each) => fromBestToWorst.indexOf(each.how)));
  return { source, places: places.filter((each) => each.place !== ''), how: fromBestToWorst[worst]! };
}

function clausesOf(design: Design): readonly Clause[] {
  const clauses: Clause[] = [...design.plant.policy.sources, ...design.findings.flatMap((finding) => finding.sources)];
  for (const machine of design.machines) {
    for (const row of machine.frequencies.rows) clauses.push(...row.line.sources);
    for (const element of machine.stated.train.elements) clauses.push(...kindOf(element).sources);
    for (const advice of machinePositions(machine.stated.train)) clauses.push(...advice.sources);
    for (const { point, appraisal, budgets, area, probes } of machine.points) {
      for (const target of point.targets) clauses.push(...target.origin.sources);
      clauses.push(...(area?.sources ?? []));
      for (const { stated } of probes?.arrangements ?? []) clauses.push(...arrangementKindOf(stated).sources);
      if (budgets.length > 0) clauses.push({ source: jcgm100, place: '5.1.6' }, { source: jcgm101 });
      if (appraisal === undefined) continue;
      for (const { effect } of pointLife(point, appraisal.prediction.chain)) clauses.push(...effect.sources);
      const judged = new Set(appraisal.judgements.map((judgement) => judgement.rule));
      for (const rule of appraisalRules) if (judged.has(rule.id)) clauses.push(...rule.sources);
      for (const part of chainParts(appraisal.prediction.chain.parts)) clauses.push(...part.kind.sources);
    }
  }
  return clauses;
}

/** The list of sources, with how each is known. */
export function sourceTable(design: Design): Html {
  return table({
    columns: [
      { head: 'Source', cell: ({ source }) => source.title },
      {
        head: 'Places',
        cell: ({ places, source }) =>
          joined(
            places.map(({ place, how }) => (how === source.how ? place : html`${place} (${how})`)),
            '; ',
          ),
      },
      { head: 'How known here', kind: 'line', cell: ({ source }) => source.how },
      { head: 'What of it is used, and any doubt', cell: ({ source }) => source.note },
    ],
    rows: sourcesCited(design),
    folds: true,
    empty: 'No source is cited.',
  });
}
