import { useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import { noOrigin } from '../engine/origin.ts';
import type { PointRow } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { bulkChange } from './bulk-change.ts';
import { type ColumnKey, columnCalled } from './columns.ts';
import { OriginFields, OriginNote } from './origin-fields.tsx';
import { wordsAtCell } from './row-edits.ts';
import { SheetDialog } from './sheet-dialog.tsx';

/** Foreseeing a point takes as long as judging it; more than this many are changed unforeseen, and that is said. */
const mostForeseen = 40;

/** A change of many points before it is made: what each had, what it would have, and what would become of it. */
export function BulkPreview({
  rows,
  column,
  value,
  close,
}: {
  readonly rows: readonly PointRow[];
  readonly column: ColumnKey;
  readonly value: string;
  readonly close: (made: boolean) => void;
}) {
  const [origin, setOrigin] = useState(noOrigin);
  const { changed, same, bare, edits, label, stated, said } = bulkChange(rows, column, value, {
    ...origin,
    source: origin.source.trim(),
  });
  const store = usePlantStore();
  const [refused, setRefused] = useState<string>();
  const [busy, setBusy] = useState(false);
  const { editing, text, title, stated: columnStates } = columnCalled(column);
  const place = editing?.by === 'part' ? editing.place : undefined;
  const asked = changed.slice(0, mostForeseen).map((row) => row.of);
  const foreseen = useAnswer(
    async ({ engine }) => (place === undefined ? [] : await engine.foreseen(asked, place, value)),
    `foreseen ${place} ${value} ${asked.join('\n')}`,
  );
  const after = new Map(foreseen?.map((each) => [each.of, each.after]));
  const make = async () => {
    setBusy(true);
    const words = await store.act(label, edits);
    setBusy(false);
    if (words === undefined) close(true);
    else setRefused(wordsAtCell(words));
  };
  return (
    <SheetDialog title={label} close={() => close(false)}>
      <div className="dialog-body">
        {changed.length === 0 ? <p>Nothing would change.</p> : undefined}
        {same.length > 0 ? (
          <p className="quiet">
            {same.length} of the selected points {same.length === 1 ? 'has' : 'have'} it already.
          </p>
        ) : undefined}
        {bare.length > 0 ? (
          <p>
            {bare.length} of the selected points {bare.length === 1 ? 'has' : 'have'} no chain to put it in, and{' '}
            {bare.length === 1 ? 'is' : 'are'} left as {bare.length === 1 ? 'it is' : 'they are'}:{' '}
            <bdi>
              {bare
                .slice(0, 5)
                .map((row) => row.of)
                .join(', ')}
            </bdi>
            {bare.length > 5 ? ' …' : ''}
          </p>
        ) : undefined}
        {changed.length > 0 && (stated || said.size > 0) ? (
          <OriginFields origin={origin} change={setOrigin} losing={said.size} />
        ) : undefined}
        {changed.length > 0 ? (
          <table>
            <thead>
              <tr>
                <th scope="col">Point</th>
                <th scope="col">{title} now</th>
                <th scope="col">then</th>
                {place === undefined ? undefined : (
                  <>
                    <th scope="col">Outcome now</th>
                    <th scope="col">then</th>
                  </>
                )}
              </tr>
            </thead>
            <tbody>
              {changed.slice(0, 200).map((row, index) => (
                <tr key={row.of}>
                  <th scope="row">
                    <bdi>{row.of}</bdi>
                  </th>
                  <td>{text(row) || <span className="quiet">none</span>}</td>
                  <td>
                    <strong>{value}</strong>
                    {columnStates ? (
                      <OriginNote said={said.get(row.of) ?? ''} origin={stated ? origin : undefined} />
                    ) : undefined}
                  </td>
                  {place === undefined ? undefined : (
                    <>
                      <td>
                        <OutcomeWord outcome={row.outcome} />
                      </td>
                      <td>
                        {index < mostForeseen ? (
                          <OutcomeWord outcome={after.get(row.of)} />
                        ) : (
                          <span className="quiet">not foreseen</span>
                        )}
                      </td>
                    </>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        ) : undefined}
        {changed.length > 200 ? <p className="quiet">and {changed.length - 200} more points.</p> : undefined}
      </div>
      <footer>
        <p role="alert" className="refused">
          {refused === undefined ? '' : `✗ Nothing was changed. ${refused}`}
        </p>
        <button type="button" className="main" disabled={changed.length === 0 || busy} onClick={() => void make()}>
          {label}
        </button>
      </footer>
    </SheetDialog>
  );
}
