import { useEffect, useRef } from 'react';
import { useSearchParams } from 'wouter';
import type { SheetForm } from '../engine/machine/views.ts';
import { Help } from '../parts/help.tsx';
import { FieldRow } from './field-row.tsx';

interface SheetFormListOptions {
  readonly forms: readonly SheetForm[];
  readonly statuses: readonly string[];
}

/** The data sheets of the machine and of each element, opened where they stand and typed into in place. */
export function SheetFormList({ forms, statuses }: SheetFormListOptions) {
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
          <p>How a value is known, and where it comes from, is printed with everything that follows from it.</p>
        </Help>
      </h2>
      <p className="quiet">Open a sheet to type into it. Enter or leaving a field takes it; Escape puts it back.</p>
      {forms.map((form) => (
        <Sheet key={form.key} form={form} statuses={statuses} sought={form.key === `element/${sought}`} />
      ))}
    </section>
  );
}

interface SheetOptions {
  readonly form: SheetForm;
  readonly statuses: readonly string[];
  /** Whether the address of the page asks for this one. */
  readonly sought: boolean;
}

function Sheet({ form, statuses, sought }: SheetOptions) {
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
              <FieldRow key={field.key} of={form.title} field={field} statuses={statuses} />
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
