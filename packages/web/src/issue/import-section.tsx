import type { IssuedRevisions } from '@soundpost/server/protocol';
import { type ChangeEvent, useEffect, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { ImportView } from '../engine/issue/import-view.ts';
import { ImportTable } from './import-table.tsx';
import { issueWorkerApart } from './issue-worker-apart.ts';
import { issuedTexts } from './issued.ts';

const largest = 32 * 1024 * 1024;
const asNow = 'the plant as it is now';

/** A table that was exported, edited by a person and handed back: what was understood; nothing is changed before it is taken. */
export function ImportSection({ issued }: { readonly issued: IssuedRevisions | undefined }) {
  const store = usePlantStore();
  const { generation, showing } = usePlantState();
  const [handed, setHanded] = useState<{ readonly file: string; readonly bytes: Uint8Array }>();
  const [from, setFrom] = useState(asNow);
  const [typed, setTyped] = useState<'point' | 'comma'>();
  const [view, setView] = useState<ImportView>();
  const [told, setTold] = useState<string>();
  const [busy, setBusy] = useState(false);
  const decimal = typed ?? showing.decimal;
  const workbook = handed?.bytes[0] === 0x50 && handed.bytes[1] === 0x4b;
  const exportedFrom = workbook ? asNow : from;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the generation stands for the text of the plant
  useEffect(() => {
    setView(undefined);
    if (handed === undefined) return;
    let stale = false;
    let stop = () => {};
    const look = async (): Promise<ImportView | undefined> => {
      const stated =
        exportedFrom === asNow || issued === undefined ? undefined : await issuedTexts(issued.folder, exportedFrom);
      if (stale) return undefined;
      const apart = issueWorkerApart(
        store,
        async (engine): Promise<ImportView> => await engine.imported({ ...handed, decimal }, stated),
      );
      stop = apart.stop;
      return apart.answer;
    };
    look().then(
      (answer) => {
        if (!stale) setView(answer);
      },
      (error: unknown) => {
        if (!stale) setView({ refused: error instanceof Error ? error.message : String(error) });
      },
    );
    return () => {
      stale = true;
      stop();
    };
  }, [store, handed, exportedFrom, decimal, generation]);
  const chosen = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    // The same file, saved once more, can be chosen again.
    const bytes = file === undefined || file.size > largest ? undefined : new Uint8Array(await file.arrayBuffer());
    target.value = '';
    if (file === undefined) return;
    setTold(bytes === undefined ? `${file.name} is larger than 32 MiB. Nothing was read.` : undefined);
    setHanded(bytes === undefined ? undefined : { file: file.name, bytes });
  };
  const take = async (edits: (ImportView & { refused: undefined })['edits']) => {
    setBusy(true);
    const words = await store.act(`Taken from ${handed!.file}`, edits);
    setBusy(false);
    if (words === undefined) setHanded(undefined);
    setTold(
      words === undefined
        ? `Taken into the plant from ${handed!.file}. Undo takes it back in one step.`
        : `Nothing was changed. ${words}`,
    );
  };
  return (
    <section aria-label="Take edited tables back">
      <h2>Take edited tables back</h2>
      <p>
        An instrument list, a cable schedule or an alarm register, exported as XLSX or CSV and edited in a spreadsheet.
        You see cell by cell what was understood; nothing is changed before you take it.
      </p>
      <div className="issue-choice">
        <label>
          Edited table
          <input type="file" className="wide" accept=".xlsx,.csv,.txt,.tsv" onChange={(event) => void chosen(event)} />
        </label>
        {handed === undefined || workbook ? undefined : (
          <>
            <label>
              Exported from
              <select className="wide" value={from} onChange={(event) => setFrom(event.target.value)}>
                <option value={asNow}>{asNow}</option>
                {issued?.revisions.map(({ name, revision }) => (
                  <option key={name} value={name}>
                    Revision {revision}
                  </option>
                ))}
              </select>
            </label>
            <label>
              Its decimal sign
              <select value={decimal} onChange={(event) => setTyped(event.target.value as 'point' | 'comma')}>
                <option value="point">point: 2.5</option>
                <option value="comma">comma: 2,5</option>
              </select>
            </label>
          </>
        )}
      </div>
      {handed === undefined ? undefined : view === undefined ? (
        <p role="status">Reading {handed.file}…</p>
      ) : view.refused !== undefined ? (
        <p role="alert" className="refused">
          ✗ {view.refused}
        </p>
      ) : (
        <ImportTable
          key={`${handed.file} ${generation}`}
          view={view}
          file={handed.file}
          busy={busy}
          take={(edits) => void take(edits)}
          putAway={() => setHanded(undefined)}
        />
      )}
      <p role="status">{told}</p>
    </section>
  );
}
