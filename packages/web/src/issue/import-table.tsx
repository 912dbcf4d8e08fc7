import type { UnderstoodCell } from '@soundpost/commands/pure';
import type { ImportView } from '../engine/issue/import-view.ts';

interface ImportTableOptions {
  readonly view: ImportView & { readonly refused: undefined };
  readonly file: string;
  readonly busy: boolean;
  readonly take: () => void;
  readonly putAway: () => void;
}

const most = 500;

/** What needs a person first, then what would be done, then what needs nothing. */
const fates: readonly (readonly [UnderstoodCell['is'], sign: string, words: string])[] = [
  ['conflict', '⚡', 'in conflict, not taken'],
  ['refused', '✗', 'refused'],
  ['change', '△', 'understood'],
  ['as the plant has it', '=', 'the plant says so already'],
];

/** Each edited cell, what was exported, what it says now, and what would become of it. */
export function ImportTable({ view, file, busy, take, putAway }: ImportTableOptions) {
  const { kind, carriesExported, cells, rowsMissing, headsUnknown, edits, exportedIn } = view;
  const count = (is: UnderstoodCell['is']) => cells.filter((each) => each.is === is).length;
  const shown = fates.flatMap(([is, sign, words]) =>
    cells.filter((each) => each.is === is).map((cell) => ({ cell, sign, words })),
  );
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
                {['Cell', 'Row', 'Column', 'Exported', 'Edited to', 'In the plant now', 'What becomes of it'].map(
                  (head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ),
                )}
              </tr>
            </thead>
            <tbody>
              {shown
                .slice(0, most)
                .map(({ cell: { cell, of, column, exported, edited, now, is, words }, sign, words: fate }) => (
                  <tr key={`${cell} ${column}`}>
                    <td>{cell}</td>
                    <td className="place">
                      <bdi>{of}</bdi>
                    </td>
                    <td>{column}</td>
                    <Text text={exported} />
                    <Text text={edited} />
                    <Text text={now} />
                    <td className="fate">
                      <span className={is === 'conflict' || is === 'refused' ? 'refused' : undefined}>
                        <span aria-hidden="true">{sign}</span> {fate}
                      </span>
                      {words === undefined ? undefined : <p>{words}</p>}
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
          {shown.length > most ? <p className="quiet">and {shown.length - most} more cells.</p> : undefined}
        </section>
      )}
      {rowsMissing.length === 0 ? undefined : (
        <p>Rows that are not in the file, and stay in the plant: {rowsMissing.join('; ')}.</p>
      )}
      {headsUnknown.length === 0 ? undefined : (
        <p>Columns that are not of this table, and are not read: {headsUnknown.join('; ')}.</p>
      )}
      <p role="status">
        {count('change')} understood, <Grave count={count('conflict')}>in conflict</Grave>,{' '}
        <Grave count={count('refused')}>refused</Grave>. Nothing is changed yet; it is one step to undo.
      </p>
      <p>
        <button type="button" className="main" disabled={busy || edits.length === 0} onClick={take}>
          Take {edits.length} {edits.length === 1 ? 'change' : 'changes'} into the plant
        </button>{' '}
        <button type="button" disabled={busy} onClick={putAway}>
          Put the table away
        </button>
      </p>
    </div>
  );
}

function Text({ text }: { readonly text: string | undefined }) {
  return <td>{text === undefined || text === '' ? <span className="quiet">nothing</span> : <bdi>{text}</bdi>}</td>;
}

function Grave({ count, children }: { readonly count: number; readonly children: string }) {
  return (
    <span className={count > 0 ? 'refused' : undefined}>
      {count} {children}
    </span>
  );
}
