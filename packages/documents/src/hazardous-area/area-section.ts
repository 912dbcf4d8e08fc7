import {
  type Answer,
  type EntityClause,
  type EntityComparison,
  hazardousAreaSheet,
  type JudgedArea,
  type LoopInArea,
  type QuantityName,
  type Sheet,
  showQuantity,
} from '@soundpost/core';
import { typedNumber } from '../derivation/explained.ts';
import { opened } from '../derivation/opened.ts';
import { answered, sheetFacts } from '../typesetting/answers.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import { type Setting, unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';
import { explainedClause } from './explained-area.ts';

/** A value of a certificate is never rounded towards passing: it is shown with as many digits as were entered. */
const digits = 6;

/** The loop against the area it stands in, clause by clause, with what each certificate says. */
export function areaSection(area: JudgedArea, setting: Setting): Html {
  return html`<p>${named(area.name)}: ${area.wording}.</p>
<dl class="facts">${sheetFacts(area.area as Sheet, hazardousAreaSheet, setting)}
<dt>level of protection asked for</dt><dd>${answered(area.required, (each) => each)}</dd>
<dt>lowest level in the loop</dt><dd>${answered(area.lowest, (each) => `i${each}`)}</dd>
<dt>column of the barrier used</dt><dd>${answered(area.column, (each) => each)}</dd></dl>
${certificateTable(area.loop, setting)}
${comparison(area.declaredBy === undefined ? 'Comparison with the cable values of the standard' : `Comparison with the declared cable values (${area.declaredBy})`, area.entity, setting)}
${area.declaredBy === undefined ? undefined : comparison('The same with the cable values of the standard', area.byDefault, setting)}
${conditions(area)}
<p class="note">${area.caution}</p>`;
}

interface CertificateRow {
  readonly of: string;
  readonly number: Answer<string>;
  readonly marking: Answer<string>;
  readonly values: readonly (readonly [string, QuantityName, Answer<number>])[];
}

function certificateTable({ apparatus, barrier, uncertified, strangers }: LoopInArea, setting: Setting): Html {
  const inField = apparatus.map(
    ({ certificate: c }): CertificateRow => ({
      of: c.of,
      number: c.number,
      marking: c.marking,
      values: [
        ['Ui', 'voltage', c.voltage],
        ['Ii', 'current', c.current],
        ['Pi', 'power', c.power],
        ['Ci', 'capacitance', c.capacitance],
        ['Li', 'inductance', c.inductance],
      ],
    }),
  );
  const limiting = barrier === undefined ? [] : [barrier.certificate];
  const outside = limiting.map(
    (c): CertificateRow => ({
      of: c.of,
      number: c.number,
      marking: c.marking,
      values: [
        ['Uo', 'voltage', c.voltage],
        ['Io', 'current', c.current],
        ['Po', 'power', c.power],
      ],
    }),
  );
  const without = [uncertified, ...strangers.map((each) => each.of)].flatMap((of) =>
    of === undefined ? [] : [html`<li>${named(of)}</li>`],
  );
  return html`${table({
    caption: 'Certificates of the loop, as entered',
    columns: [
      { head: 'Part', cell: (row: CertificateRow) => named(row.of) },
      { head: 'Certificate', cell: ({ number }) => answered(number, (each) => each) },
      { head: 'Marking', cell: ({ marking }) => answered(marking, (each) => each) },
      {
        head: 'Values',
        cell: (row) =>
          row.values.map(([name, quantity, value]) => certificateValue(row, name, quantity, value, setting)),
      },
    ],
    rows: [...inField, ...outside],
    folds: true,
    empty: 'No part of the loop has a certificate.',
  })}${without.length === 0 ? undefined : html`<p>Before the barrier, without certificate or declaration:</p><ul>${without}</ul>`}`;
}

function certificateValue(
  { of, number }: CertificateRow,
  name: string,
  quantity: QuantityName,
  value: Answer<number>,
  setting: Setting,
): Piece {
  // A simple apparatus bears whatever the others bear; its certificate states no highest value.
  const text = value.known ? showQuantity(quantity, value.value, { ...setting.showing, digits }) : '';
  const source = number.known ? { source: `certificate ${number.value}` } : {};
  const entry = { known: true, value, written: '', status: 'certificate', ...source } as const;
  const shown = value.known ? opened(text, () => typedNumber(name, of, entry, text), setting) : unknown();
  return html`<span class="line">${name} ${shown}</span> `;
}

function comparison(caption: string, entity: Answer<EntityComparison>, setting: Setting): Html {
  const { showing } = setting;
  if (!entity.known) return html`<p>${caption}: ${sign('cannot tell')}, ${unknown(entity.missing)}.</p>`;
  const { value: found } = entity;
  return html`${table({
    caption,
    columns: [
      { head: 'Clause', kind: 'line', cell: (each: EntityClause) => each.name },
      {
        head: 'Found',
        kind: 'measure',
        cell: (each) => showQuantity(each.quantity, each.found, { ...showing, digits }),
        opened: (each, set) => opened(set, explainedClause(found, each, 'found', showing), setting),
      },
      {
        head: 'Allowed',
        kind: 'measure',
        cell: (each) => showQuantity(each.quantity, each.limit, { ...showing, digits }),
        opened: (each, set) => opened(set, explainedClause(found, each, 'limit', showing), setting),
      },
      { head: 'Outcome', kind: 'line', cell: (each) => sign(each.passed ? 'meets' : 'fails') },
    ],
    rows: found.clauses,
    folds: true,
  })}<p>${found.halved ? 'Co and Lo count half here, because both lumped values exceed 1 % of them. ' : ''}Longest cable of this kind that passes: ${Math.floor(found.maximumLength)} m, limited by ${found.limitedBy}; cable values ${found.cable.known}.</p>`;
}

function conditions({ conditions: all }: JudgedArea): Html | undefined {
  if (all.length === 0) return undefined;
  return html`<p>Special conditions of the certificates, to be carried to the installation:</p><ul>${all.map((each) => html`<li>${named(each.of)}: ${each.words}</li>`)}</ul>`;
}
