import { allowanceSheet, type Design, type Sheet } from '@soundpost/core';
import { statedShown } from '../typesetting/answers.ts';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { partsInUse, type StatedValue, valuesOf } from './stated-values.ts';

/** The data sheets the proof rests on, each value with how it is known. */
export function partsSection(design: Design, setting: Setting): Html {
  const parts = partsInUse(design).map(
    ({
      part,
      at,
    }) => html`<h4>${part.role === 'in the line' ? 'supply' : part.role} ${named(part.name)}: ${part.kind.name}</h4>
<p class="note">Used at ${joined(at.map((each) => named(each)))}.</p>
${valueTable(valuesOf(part.sheet, part.kind.dataSheet), setting)}`,
  );
  const allowances = valuesOf(design.plant.allowances as Sheet, allowanceSheet);
  return html`${parts}<h4>Allowances of the plant: what no data sheet tells</h4>
${valueTable(allowances, setting)}`;
}

function valueTable(values: readonly StatedValue[], setting: Setting): Html {
  return table({
    columns: [
      { head: 'Value of', cell: ({ what }: StatedValue) => what },
      { head: 'Stated', cell: ({ entry, field }) => statedShown(entry, field, setting) },
      { head: 'What it is', cell: ({ field }) => field.meaning },
      { head: 'How known', cell: ({ entry }) => howKnown(entry) },
    ],
    rows: values,
    folds: true,
    empty: 'Nothing is stated.',
  });
}

/** A catalogue says in its head where its numbers come from; a single value that says so itself is shown so. */
function howKnown(entry: StatedValue['entry']): string {
  if (!entry.known) return 'not known';
  const how = [entry.status, entry.source].filter((each) => each !== undefined).join(', ');
  return how === '' ? 'not said' : how;
}
