import { useEffect, useRef } from 'react';
import { useSearchParams } from 'wouter';
import type { MachineBench, SheetForm } from '../engine/machine/views.ts';
import { Help } from '../parts/help.tsx';
import { ElementAdding } from './element-adding.tsx';
import { ElementStanding } from './element-standing.tsx';
import { FieldRow } from './field-row.tsx';
import { OperationChoice } from './operation-choice.tsx';

/** The data sheets of the machine and of each element, opened where they stand and typed into in place. */
export function SheetFormList({ bench }: { readonly bench: MachineBench }) {
  const [search] = useSearchParams();
  const sought = search.get('sheet');
  return (
    <section aria-labelledby="sheets-typed">
      <h2 id="sheets-typed">
        Data sheets{' '}
        <Help of="stated, unknown and left out">
          <p>
            A value that is not stated stays unknown: what needs it says so, and nothing is filled in for it. What may
            be left out means ‘it has none’.
          </p>
          <p>
            Of what is not known can be said who could answer, and between which bounds it is believed to lie: then it
            stands among the questions with its addressee.
          </p>
          <p>How a value is known, and where it comes from, is printed with everything that follows from it.</p>
        </Help>
      </h2>
      <p className="quiet">Open a sheet to type into it. Enter or leaving a field takes it; Escape puts it back.</p>
      {bench.forms.map((form) => (
        <Sheet key={form.key} form={form} bench={bench} sought={form.key === `element/${sought}`} />
      ))}
      <ElementAdding bench={bench} />
    </section>
  );
}

interface SheetOptions {
  readonly form: SheetForm;
  readonly bench: MachineBench;
  /** Whether the address of the page asks for this one. */
  readonly sought: boolean;
}

function Sheet({ form, bench, sought }: SheetOptions) {
  const sheet = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (!sought || sheet.current === null) return;
    sheet.current.open = true;
    sheet.current.scrollIntoView({ block: 'start' });
    sheet.current.querySelector('summary')?.focus({ preventScroll: true });
  }, [sought]);
  return (
    <details ref={sheet} className="sheet-form">
      <summary>
        <h3 title={form.title}>
          <bdi>{form.title}</bdi>
        </h3>{' '}
        <span className="kind">{form.kind}</span>{' '}
        <span className="stands">
          <bdi>{form.stands}</bdi>
        </span>{' '}
        <span className="summary">
          <bdi>{form.summary}</bdi>
        </span>
      </summary>
      {form.element === undefined ? undefined : <ElementStanding bench={bench} element={form.element} />}
      {form.key === 'operation' ? <OperationChoice bench={bench} /> : undefined}
      {form.fields.length === 0 ? (
        <p className="empty">This kind asks for nothing beside the shafts it stands on.</p>
      ) : (
        <table className="field-table">
          <thead>
            <tr>
              <th scope="col">Field</th>
              <th scope="col">Value, with unit</th>
              <th scope="col">How it is known</th>
              <th scope="col">Where from</th>
            </tr>
          </thead>
          <tbody>
            {form.fields.map((field) => (
              <FieldRow key={field.key} of={form.title} field={field} statuses={bench.statuses} />
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
