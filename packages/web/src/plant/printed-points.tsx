import { Fragment } from 'react';
import { columns } from './columns.ts';
import type { Line } from './lines.ts';
import { PointCell } from './point-cell.tsx';

/** The table of measuring points for paper: a plain table that holds every line, with its heads on every sheet. */
export function PrintedPoints({ lines }: { readonly lines: readonly Line[] }) {
  return (
    <table className="printed-points">
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.key} scope="col" className={column.align}>
              {column.head ?? column.title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <Fragment key={line.key}>
            {line.kind === 'machine' ? (
              <tr className="machine">
                <th scope="rowgroup" colSpan={columns.length}>
                  <bdi>{line.name}</bdi> <bdi className="machine-title">{line.title}</bdi>
                  {line.points.length === 0 ? <span className="quiet"> no measuring point yet</span> : undefined}
                </th>
              </tr>
            ) : (
              <tr>
                {columns.map((column) => (
                  <td key={column.key} className={column.align}>
                    <PointCell row={line.row} column={column} />
                  </td>
                ))}
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}
