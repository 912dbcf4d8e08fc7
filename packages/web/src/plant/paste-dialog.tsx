import { useDeferredValue, useState } from 'react';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import { noOrigin } from '../engine/origin.ts';
import { type PasteAt, type PasteChoices, type PasteField, pasteFields } from '../engine/paste/views.ts';
import { OriginFields } from './origin-fields.tsx';
import { PasteTable } from './paste-table.tsx';
import { wordsAtCell } from './row-edits.ts';
import { SheetDialog } from './sheet-dialog.tsx';

/** A table copied from a spreadsheet: how it is read, what is refused and why; nothing is changed before it is confirmed. */
export function PasteDialog({
  first,
  at,
  close,
}: {
  readonly first: string;
  /** Where in the table of points the hand was when it was pasted. */
  readonly at: PasteAt | undefined;
  readonly close: () => void;
}) {
  const store = usePlantStore();
  const [text, setText] = useState(first);
  const start: PasteChoices = at === undefined ? {} : { at };
  const [choices, setChoices] = useState<PasteChoices>(start);
  const [refused, setRefused] = useState<string>();
  const [busy, setBusy] = useState(false);
  const asked = useDeferredValue(text);
  const answer = useAnswer(
    ({ engine }) => engine.pasted(asked, choices),
    `${JSON.stringify({ ...choices, at: at?.points.length })} ${asked}`,
  );
  const [shown, setShown] = useState(answer);
  if (answer !== undefined && answer !== shown) setShown(answer);
  const view = asked.trim() === '' ? undefined : shown;
  const said = ({ fields, ...more }: PasteChoices) => {
    setRefused(undefined);
    const { fields: before, ...rest } = choices;
    const kept = fields ?? ('placing' in more || 'heads' in more ? undefined : before);
    setChoices({ ...rest, ...more, ...(kept === undefined ? {} : { fields: kept }) });
  };
  const made = view?.rows.filter((row) => row.fate === 'new').length ?? 0;
  const changed = view?.rows.filter((row) => row.fate === 'changed').length ?? 0;
  const origin = choices.origin ?? noOrigin;
  const coming = view?.rows.flatMap((row) => (row.refused === undefined ? row.cells : [])) ?? [];
  const states = coming.some((cell) => cell.stated && cell.taken !== undefined);
  const losing = coming.filter((cell) => cell.taken !== undefined && cell.said !== '').length;
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
              setChoices({ ...start, ...(choices.origin === undefined ? {} : { origin: choices.origin }) });
              setRefused(undefined);
            }}
          />
        </label>
        {view === undefined ? undefined : (
          <>
            {view.mayPlace ? (
              <fieldset className="paste-placing">
                <legend>Where the rows go</legend>
                {(
                  [
                    ['by place', `To ${at!.points[0]} and the points below it, as the table lists them`],
                    ['by name', 'To the points that a column names'],
                  ] as const
                ).map(([placing, words]) => (
                  <label key={placing} className="tick">
                    <input
                      type="radio"
                      name="paste-placing"
                      checked={view.placing === placing}
                      onChange={() => said({ placing })}
                    />{' '}
                    <bdi>{words}</bdi>
                  </label>
                ))}
              </fieldset>
            ) : undefined}
            <fieldset className="paste-columns">
              <legend>Columns</legend>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={view.heads}
                  onChange={(event) => said({ heads: event.target.checked })}
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
            {view.unread === undefined && states ? (
              <OriginFields origin={origin} change={(next) => said({ origin: next })} losing={losing} />
            ) : undefined}
            {view.unread === undefined ? (
              <PasteTable view={view} origin={origin} />
            ) : (
              <p className="refused">✗ {view.unread}</p>
            )}
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
