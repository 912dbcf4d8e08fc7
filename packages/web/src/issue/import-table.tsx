import type { UnderstoodCell } from '@soundpost/commands/pure';
import { useState } from 'react';
import type { ImportView } from '../engine/issue/import-view.ts';
import { fates, ImportRow, importHeads } from './import-row.tsx';

type Understood = ImportView & { readonly refused: undefined };

interface ImportTableOptions {
  readonly view: Understood;
  readonly file: string;
  readonly busy: boolean;
  readonly take: (edits: Understood['edits']) => void;
  readonly putAway: () => void;
}

const most = 500;

/** Each edited cell, what was exported, what it says now, and what would become of it. */
export function ImportTable({ view, file, busy, take, putAway }: ImportTableOptions) {
  const { kind, carriesExported, cells, exportedIn } = view;
  const [overruled, setOverruled] = useState<ReadonlySet<string>>(new Set());
  const count = (is: UnderstoodCell['is']) => cells.filter((each) => each.is === is).length;
  const shown = fates.flatMap(([is]) => cells.filter((each) => each.is === is));
  const decided = cells.filter((each) => each.is === 'conflict' && overruled.has(each.cell));
  const edits = [...view.edits, ...decided.flatMap(({ edit }) => (edit === undefined ? [] : [edit]))];
  const overrule = (cell: string, holds: boolean) => {
    const next = new Set(overruled);
    if (holds) next.add(cell);
    else next.delete(cell);
    setOverruled(next);
  };
  return (
    <div className="imported">
      <p>
        <bdi>{file}</bdi> was read as {kind.replaceAll('-', ' ')}.{' '}
        {exportedIn === undefined
          ? undefined
          : `It was exported in revision ${exportedIn.revision}; the plant ${exportedIn.plantAsThen ? 'is as it was then' : 'has changed since'}. `}
        {carriesExported
          ? undefined
          : 'It does not carry what was exported: compared with the plant as it is now, what the plant changed since looks like an edit. Say which revision it was exported from to tell them apart.'}
      </p>
      {cells.length === 0 ? (
        <p>No cell was edited.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
        <section className="pushed" aria-label="What was understood" tabIndex={0}>
          <table>
            <thead>
              <tr>
                {importHeads.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.slice(0, most).map((told) => (
                <ImportRow
                  key={`${told.cell} ${told.column}`}
                  told={told}
                  overruled={overruled.has(told.cell)}
                  overrule={(holds) => overrule(told.cell, holds)}
                />
              ))}
            </tbody>
          </table>
          {shown.length > most ? (
            <p className="quiet">
              and {shown.length - most} more cells. What is understood of them is taken too; nothing in conflict is.
            </p>
          ) : undefined}
        </section>
      )}
      {unread(view).map(([words, list]) => (
        <p key={words}>
          {words}: <bdi>{list.join('; ')}</bdi>.
        </p>
      ))}
      <p role="status">
        {count('change')} understood, <Grave count={count('conflict') - decided.length}>in conflict</Grave>,{' '}
        <Grave count={count('refused')}>refused</Grave>
        {decided.length === 0 ? '' : `, ${decided.length} decided for the table`}. Nothing is changed yet; it is one
        step to undo.
      </p>
      <p>
        <button type="button" className="main" disabled={busy || edits.length === 0} onClick={() => take(edits)}>
          Take {edits.length} {edits.length === 1 ? 'change' : 'changes'} into the plant
        </button>{' '}
        <button type="button" disabled={busy} onClick={putAway}>
          Put the table away
        </button>
      </p>
    </div>
  );
}

/** What the file does not have of the table, and what it has that is not of the table. */
function unread({ rowsMissing, headsMissing, headsUnknown, tabsNotRead }: Understood) {
  const all: readonly (readonly [string, readonly string[]])[] = [
    ['Rows that are not in the file, and stay in the plant', rowsMissing],
    ['Columns that are not in the file, and stay as they are', headsMissing],
    ['Columns that are not of this table, and are not read', headsUnknown],
    ['Other tabs, from which nothing is read', tabsNotRead],
  ];
  return all.filter(([, list]) => list.length > 0);
}

function Grave({ count, children }: { readonly count: number; readonly children: string }) {
  return (
    <span className={count > 0 ? 'refused' : undefined}>
      {count} {children}
    </span>
  );
}
