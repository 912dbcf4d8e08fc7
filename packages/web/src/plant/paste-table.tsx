import { useState } from 'react';
import type { Origin } from '../engine/origin.ts';
import type { PasteCell, PasteRow, PasteView } from '../engine/paste/views.ts';
import { OriginNote } from './origin-fields.tsx';

const most = 200;
const signs: Readonly<Record<PasteRow['fate'], string>> = { new: '+', changed: '△', 'as it was': '=', refused: '✗' };

/** What was understood of each row: what stays, what changes from what to what, what is refused and why. */
export function PasteTable({ view, origin }: { readonly view: PasteView; readonly origin: Origin }) {
  const [only, setOnly] = useState(false);
  const lame = (row: PasteRow) => row.refused !== undefined || row.cells.some((cell) => cell.refused !== undefined);
  const rows = only ? view.rows.filter(lame) : view.rows;
  const fields = view.columns.flatMap(({ field }) =>
    field === undefined || field === 'machine' || field === 'point' ? [] : [field],
  );
  return (
    <>
      <label className="tick">
        <input type="checkbox" checked={only} onChange={(event) => setOnly(event.target.checked)} /> Only rows with
        something refused
      </label>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard */}
      <section className="paste-rows" aria-label="What was understood" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Point</th>
              <th scope="col">What it does</th>
              {fields.map((field) => (
                <th key={field} scope="col">
                  {field.replaceAll('-', ' ')}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, most).map((row) => (
              <tr key={row.line} className={lame(row) ? 'lame' : undefined}>
                <td>{row.line}</td>
                <th scope="row">
                  <bdi>{row.point === '' ? 'no name' : row.point}</bdi>
                  {row.machine === '' ? undefined : (
                    <span className="quiet">
                      {' '}
                      <bdi>{row.machine}</bdi>
                    </span>
                  )}
                </th>
                <td className="fate">
                  <span aria-hidden="true">{signs[row.fate]}</span> {row.fate}
                  {row.refused === undefined ? undefined : <p className="refused">{row.refused}</p>}
                </td>
                {fields.map((field) => (
                  <td key={field}>
                    <Value cell={row.cells.find((cell) => cell.field === field)} origin={origin} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
        {rows.length > most ? <p className="quiet">and {rows.length - most} more rows.</p> : undefined}
      </section>
    </>
  );
}

function Value({ cell, origin }: { readonly cell: PasteCell | undefined; readonly origin: Origin }) {
  if (cell === undefined) return undefined;
  const { pasted, before, said, stated, taken, refused } = cell;
  if (refused !== undefined) {
    return (
      <span className="refused">
        ✗ <bdi className="refused-text">{pasted === '' ? 'nothing' : pasted}</bdi> <span>{refused}</span>
      </span>
    );
  }
  if (taken === undefined) return <bdi className="quiet">{before}</bdi>;
  return (
    <>
      {before === '' ? undefined : (
        <>
          <del className="quiet">
            <bdi>{before}</bdi>
          </del>{' '}
        </>
      )}
      <ins>
        <bdi>{taken}</bdi>
      </ins>
      {stated ? <OriginNote said={said} origin={taken === 'unknown' ? undefined : origin} /> : undefined}
    </>
  );
}
