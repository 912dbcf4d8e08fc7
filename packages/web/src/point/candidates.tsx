import { useEffect, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { CandidateView, PointView } from '../engine/views.ts';
import { usePrinting } from '../parts/use-printing.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber } from '../parts/why.tsx';

/** Every candidate against every target, best first, each taken with one press. */
export function Candidates({ point }: { readonly point: PointView }) {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const [rows, setRows] = useState<readonly CandidateView[]>();
  const [all, setAll] = useState(false);
  const printing = usePrinting();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text of the plant is a reason to ask again
  useEffect(() => {
    const asked = store.aside((engine) => engine.candidates(point.of));
    void asked.answer.then(setRows);
    return asked.stop;
  }, [store, point.of, generation]);
  if (rows === undefined) return <p className="waiting">Holding every candidate against every target…</p>;
  if (rows.length === 0) return <p>State the way to the input first: a cable, its length and an input.</p>;
  const targets = rows[0]!.cells.map((each) => each.target);
  const shown = all || printing ? rows : rows.slice(0, 20);
  const askedOf = ({ transducer, mount }: CandidateView) =>
    ({ is: 'candidate', of: point.of, transducer, mount }) as const;
  const take = (row: CandidateView) =>
    store.act(`${row.transducer} on ${row.mount} at ${point.name}`, [
      { path: [...point.path, 'chain', 'transducer'], yaml: JSON.stringify(row.transducer) },
      { path: [...point.path, 'chain', 'mount'], yaml: JSON.stringify(row.mount) },
    ]);
  return (
    <>
      <p className="quiet">
        Outcome first; of those that fail, fewest failures; then the larger least margin; then the cheaper. Each cell
        says by how much the deciding requirement is met; opened, it says which one that is and why.
      </p>
      <ul className="key">
        {targets.map((target, index) => (
          <li key={target}>
            <strong>{index + 1}</strong> <bdi>{target}</bdi>
          </li>
        ))}
      </ul>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-label="Shortlist">
        <table className="shortlist">
          <thead>
            <tr>
              <th scope="col">Transducer on mount</th>
              <th scope="col">Outcome</th>
              <th scope="col" className="number">
                Least margin
              </th>
              {targets.map((target, index) => (
                <th key={target} scope="col" className="number" title={target}>
                  {index + 1}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">Choose</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={`${row.transducer} ${row.mount}`} className={row.chosen ? 'chosen' : undefined}>
                <th scope="row" title={row.remark}>
                  {row.transducer} <span className="quiet">on</span> {row.mount}
                </th>
                <td>
                  <OutcomeWord outcome={row.outcome} />
                </td>
                <td className="number">
                  <OpeningNumber asked={{ ...askedOf(row), target: undefined }} what="Least margin">
                    {row.margin}
                  </OpeningNumber>
                </td>
                {row.cells.map((cell) => (
                  <td
                    key={cell.target}
                    className={`number cell ${cell.outcome.replaceAll(' ', '-')}`}
                    title={cell.reason}
                  >
                    <span className="unseen">{cell.outcome} </span>
                    <span aria-hidden="true">{marks[cell.outcome]} </span>
                    {cell.margin === '' ? undefined : (
                      <OpeningNumber asked={{ ...askedOf(row), target: cell.target }} what={`Margin, ${cell.target}`}>
                        {cell.margin}
                      </OpeningNumber>
                    )}
                  </td>
                ))}
                <td>
                  {row.chosen ? (
                    <strong>chosen</strong>
                  ) : (
                    <button type="button" onClick={() => void take(row)}>
                      Take
                      <span className="unseen">
                        {' '}
                        {row.transducer} on {row.mount}
                      </span>
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {rows.length > shown.length ? (
        <button type="button" className="more" onClick={() => setAll(true)}>
          Show the other {rows.length - shown.length}
        </button>
      ) : undefined}
    </>
  );
}

const marks: Readonly<Record<string, string>> = { meets: '✓', warns: '!', 'cannot tell': '?', fails: '✗' };
