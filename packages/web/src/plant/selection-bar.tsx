import { useState } from 'react';
import { useAnswer } from '../app/plant-context.tsx';
import type { PointRow } from '../engine/views.ts';
import { BulkPreview } from './bulk-preview.tsx';
import { type ColumnKey, columnCalled, columns } from './columns.ts';
import type { Selection } from './use-selection.ts';

const changeable = columns.filter((column) => column.editing !== undefined && column.key !== 'location');

/** What can be done to the selected points at once; the line stands there before anything is selected. */
export function SelectionBar({
  selection,
  rows,
}: {
  readonly selection: Selection;
  readonly rows: readonly PointRow[];
}) {
  const parts = useAnswer((store) => store.engine.placeChoices(), 'place choices');
  const [key, setKey] = useState<ColumnKey>('mount');
  const [value, setValue] = useState('');
  const [preview, setPreview] = useState<{ readonly rows: readonly PointRow[]; readonly value: string }>();
  const count = rows.length;
  const { editing, title } = columnCalled(key);
  const choices = editing?.by === 'part' ? (parts?.[editing.place] ?? []) : undefined;
  return (
    <form
      className="selection-bar"
      aria-label="Change the selected points"
      onSubmit={(event) => {
        event.preventDefault();
        if (count > 0 && value.trim() !== '') setPreview({ rows, value: value.trim() });
      }}
    >
      <p role="status">
        {count === 0 ? (
          <span className="quiet">Select points to change many at once</span>
        ) : (
          <>
            <strong>{count}</strong> {count === 1 ? 'point' : 'points'} selected
          </>
        )}
      </p>
      <label>
        <span>Set</span>
        <select
          value={key}
          disabled={count === 0}
          onChange={(event) => {
            setKey(event.target.value as ColumnKey);
            setValue('');
          }}
        >
          {changeable.map((each) => (
            <option key={each.key} value={each.key}>
              {each.title.toLowerCase()}
            </option>
          ))}
        </select>
      </label>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the control is one of two, and inside */}
      <label>
        <span>to</span>
        {choices === undefined ? (
          <input
            type="text"
            value={value}
            disabled={count === 0}
            placeholder={editing?.by === 'length' ? '85 m' : ''}
            onChange={(event) => setValue(event.target.value)}
          />
        ) : (
          <select value={value} disabled={count === 0} onChange={(event) => setValue(event.target.value)}>
            <option value="">a {title.toLowerCase()}</option>
            {choices.map((each) => (
              <option key={each.name}>{each.name}</option>
            ))}
          </select>
        )}
      </label>
      <button type="submit" disabled={count === 0 || value.trim() === ''}>
        Preview…
      </button>
      <button type="button" disabled={count === 0} onClick={selection.clear}>
        Select none
      </button>
      {preview === undefined ? undefined : (
        <BulkPreview
          rows={preview.rows}
          column={key}
          value={preview.value}
          close={(made) => {
            setPreview(undefined);
            if (made) setValue('');
          }}
        />
      )}
    </form>
  );
}
