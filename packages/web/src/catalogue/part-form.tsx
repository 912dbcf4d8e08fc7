import type { Shelf } from '@soundpost/core';
import { type FormEvent, useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { FieldView, PartEdits, PartView, ShelfView, TypedField } from '../engine/catalogue/views.ts';
import { PartField } from './part-field.tsx';
import { shelfTitles } from './shelf-titles.ts';

/** A data sheet as a form: of an entry that is changed, or of a new one whose kind is chosen here. */
export function PartForm({
  shelves,
  changes,
  onDone,
}: {
  readonly shelves: readonly ShelfView[];
  readonly changes: PartView | undefined;
  readonly onDone: (saved: string | undefined) => void;
}) {
  const [shelf, setShelf] = useState<Shelf>(changes?.shelf ?? 'transducers');
  const kinds = shelves.find((each) => each.shelf === shelf)?.kinds ?? [];
  const [chosenKind, setKind] = useState(changes?.kind ?? '');
  const kind = changes?.kind ?? (kinds.some((each) => each.kind === chosenKind) ? chosenKind : (kinds[0]?.kind ?? ''));
  const empty = useAnswer((store) => store.engine.emptySheet(shelf, kind), `sheet ${shelf} ${kind}`);
  return (
    <article className="part-form">
      <h2>{changes === undefined ? 'A new entry' : <bdi>{changes.name}</bdi>}</h2>
      <p className="note">
        {changes?.owner === 'catalogue'
          ? 'What is changed is kept in the plant file; the catalogue stays as it is.'
          : 'It is kept in the plant file.'}{' '}
        What is not known stays empty, or is told as ‘unknown’; nothing is filled in.
      </p>
      {changes === undefined ? (
        <div className="kind-choice">
          <label>
            Shelf
            <select value={shelf} onChange={(event) => setShelf(event.target.value as Shelf)}>
              {shelves.map((each) => (
                <option key={each.shelf} value={each.shelf}>
                  {shelfTitles[each.shelf]}
                </option>
              ))}
            </select>
          </label>
          <label>
            Kind
            <select value={kind} onChange={(event) => setKind(event.target.value)}>
              {kinds.map((each) => (
                <option key={each.kind} value={each.kind}>
                  {each.name}
                </option>
              ))}
            </select>
          </label>
        </div>
      ) : undefined}
      {empty === undefined ? (
        <p className="waiting">Opening…</p>
      ) : (
        <Form
          key={`${shelf} ${kind}`}
          shelf={shelf}
          kind={kind}
          changes={changes}
          fields={changes?.fields ?? empty.fields}
          statuses={empty.statuses}
          onDone={onDone}
        />
      )}
    </article>
  );
}

function Form({
  shelf,
  kind,
  changes,
  fields,
  statuses,
  onDone,
}: {
  readonly shelf: Shelf;
  readonly kind: string;
  readonly changes: PartView | undefined;
  readonly fields: readonly FieldView[];
  readonly statuses: readonly string[];
  readonly onDone: (saved: string | undefined) => void;
}) {
  const store = usePlantStore();
  const [name, setName] = useState(changes?.name ?? '');
  const [touched, setTouched] = useState<Readonly<Record<string, TypedField>>>({});
  const [tried, setTried] = useState(false);
  const [refusedWhole, setRefusedWhole] = useState<string>();
  const typed = { shelf, kind, name, changes: changes?.name, fields: touched };
  const answer = useAnswer<PartEdits>(async (asked) => await asked.engine.partEdits(typed), JSON.stringify(typed));
  const refused = answer !== undefined && 'refused' in answer ? answer.refused : {};
  const save = async (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    const made: PartEdits = await store.engine.partEdits(typed);
    if (!('edits' in made)) return;
    const words = await store.act(made.label, made.edits);
    setRefusedWhole(words);
    if (words === undefined) onDone(name.trim());
  };
  const groups = [
    { title: 'Asked of every entry of the kind', fields: fields.filter((each) => !each.optional), open: true },
    { title: 'Stated where it applies', fields: fields.filter((each) => each.optional && stands(each)), open: true },
    { title: 'May be stated as well', fields: fields.filter((each) => each.optional && !stands(each)), open: false },
  ];
  return (
    <form onSubmit={(event) => void save(event)} noValidate>
      {changes === undefined ? (
        <div className="field">
          <label htmlFor="part-name">Name it goes by</label>
          <input
            id="part-name"
            type="text"
            spellCheck={false}
            value={name}
            aria-invalid={refused.name !== undefined && (tried || name !== '')}
            aria-describedby="part-name-words"
            onChange={(event) => setName(event.target.value)}
          />
          <p
            className={refused.name !== undefined && (tried || name !== '') ? 'words refused' : 'words'}
            id="part-name-words"
            aria-live="polite"
          >
            {refused.name ?? ''}
          </p>
        </div>
      ) : undefined}
      {groups
        .filter((each) => each.fields.length > 0)
        .map((group) => (
          <details key={group.title} open={group.open}>
            <summary>
              {group.title} <span className="quiet">({group.fields.length})</span>
            </summary>
            <div className="part-fields">
              {group.fields.map((field) => (
                <PartField
                  key={field.key}
                  field={field}
                  typed={touched[field.key]}
                  refused={refused[field.key]}
                  statuses={statuses}
                  onTyped={(value) => setTouched((before) => ({ ...before, [field.key]: value }))}
                />
              ))}
            </div>
          </details>
        ))}
      <div className="part-save">
        <button type="submit" className="main" disabled={Object.keys(touched).length === 0}>
          Keep in the plant file
        </button>
        <button type="button" onClick={() => onDone(undefined)}>
          Leave it as it was
        </button>
        <p className="words refused" aria-live="polite">
          {refusedWhole ?? (tried && Object.keys(refused).length > 0 ? 'A field cannot be read; it says why.' : '')}
        </p>
      </div>
    </form>
  );
}

function stands({ state }: FieldView): boolean {
  return state !== 'left out';
}
