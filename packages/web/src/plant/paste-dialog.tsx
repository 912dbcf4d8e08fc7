import { useDeferredValue, useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import { type PasteChoices, type PasteField, pasteFields } from '../engine/paste/views.ts';
import { PasteTable } from './paste-table.tsx';
import { wordsAtCell } from './row-edits.ts';
import { SheetDialog } from './sheet-dialog.tsx';

/** A table copied from a spreadsheet: how it is read, what is refused and why; nothing is changed before it is confirmed. */
export function PasteDialog({ first, close }: { readonly first: string; readonly close: () => void }) {
  const store = usePlantStore();
  const [text, setText] = useState(first);
  const [choices, setChoices] = useState<PasteChoices>({});
  const [refused, setRefused] = useState<string>();
  const [busy, setBusy] = useState(false);
  const asked = useDeferredValue(text);
  const answer = useAnswer(({ engine }) => engine.pasted(asked, choices), `${JSON.stringify(choices)} ${asked}`);
  const [shown, setShown] = useState(answer);
  if (answer !== undefined && answer !== shown) setShown(answer);
  const view = asked.trim() === '' ? undefined : shown;
  const said = (more: PasteChoices) => {
    setRefused(undefined);
    setChoices({ ...choices, ...more });
  };
  const made = view?.rows.filter((row) => row.fate === 'new').length ?? 0;
  const changed = view?.rows.filter((row) => row.fate === 'changed').length ?? 0;
  const apply = async () => {
    if (answer === undefined) return;
    setBusy(true);
    const words = await store.act(answer.label, answer.edits);
    setBusy(false);
    if (words === undefined) close();
    else setRefused(wordsAtCell(words));
  };
  return (
    <SheetDialog title="Paste a table of measuring points" close={close}>
      <div className="dialog-body">
        <label className="paste-text">
          <span>
            Rows copied from a spreadsheet, or values parted by semicolons or commas. The first row may name the
            columns: Machine, Point, Transducer, Mount, Cable, Length [m], Input, Location, Direction, Installation,
            Surface temperature [°C].
          </span>
          <textarea
            value={text}
            rows={view === undefined ? 10 : 4}
            spellCheck={false}
            onChange={(event) => {
              setText(event.target.value);
              setChoices({});
              setRefused(undefined);
            }}
          />
        </label>
        {view === undefined ? undefined : (
          <>
            <fieldset className="paste-columns">
              <legend>Columns</legend>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={view.heads}
                  onChange={(event) => setChoices({ ...choices, heads: event.target.checked, fields: [] })}
                />{' '}
                The first row names the columns
              </label>
              {view.columns.slice(0, 40).map((column, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column of a table is its place
                <label key={index}>
                  <span>
                    <bdi>{column.head === '' ? `Column ${index + 1}` : column.head}</bdi>
                  </span>
                  <select
                    value={column.field ?? 'left out'}
                    onChange={(event) => {
                      const fields = view.columns.map((each) => each.field ?? ('left out' as const));
                      fields[index] = event.target.value as PasteField | 'left out';
                      said({ fields });
                    }}
                  >
                    <option value="left out">left out</option>
                    {pasteFields.map((field) => (
                      <option key={field} value={field}>
                        {field.replaceAll('-', ' ')}
                      </option>
                    ))}
                  </select>
                </label>
              ))}
            </fieldset>
            {view.asksDecimal === undefined ? undefined : (
              <fieldset className="paste-decimal">
                <legend>
                  How is <bdi>{view.asksDecimal}</bdi> to be read? It is one number in one country and another in the
                  next.
                </legend>
                {(
                  [
                    ['comma', 'The comma is the decimal sign: 2,5 is two and a half'],
                    ['point', 'The point is the decimal sign: 2.5 is two and a half'],
                  ] as const
                ).map(([decimal, words]) => (
                  <label key={decimal} className="tick">
                    <input
                      type="radio"
                      name="paste-decimal"
                      checked={view.decimal === decimal}
                      onChange={() => said({ decimal })}
                    />{' '}
                    {words}
                  </label>
                ))}
              </fieldset>
            )}
            {view.unread === undefined ? <PasteTable view={view} /> : <p className="refused">✗ {view.unread}</p>}
          </>
        )}
      </div>
      <footer>
        <p role="status">
          {refused !== undefined ? (
            <span className="refused">✗ Nothing was changed. {refused}</span>
          ) : view === undefined || view.unread !== undefined ? undefined : (
            <>
              {made} new, {changed} changed, {view.rows.filter((row) => row.fate === 'as it was').length} as they were;{' '}
              <span className={view.refusals > 0 ? 'refused' : undefined}>{view.refusals} refused</span>. Nothing is
              changed yet; it is one step to undo.
            </>
          )}
        </p>
        <button
          type="button"
          className="main"
          disabled={busy || answer === undefined || answer.edits.length === 0 || view === undefined}
          onClick={() => void apply()}
        >
          Take {made + changed} {made + changed === 1 ? 'row' : 'rows'} into the plant
        </button>
      </footer>
    </SheetDialog>
  );
}
