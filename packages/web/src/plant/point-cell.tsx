import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import type { PointRow } from '../engine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import type { Column } from './columns.ts';

/** What a cell shows of its point. */
export function PointCell({ row, column }: { readonly row: PointRow; readonly column: Column }) {
  if (column.key === 'name') {
    return (
      <Link href={pointAddress(row.of)} tabIndex={-1} title={row.name}>
        <bdi>{row.name}</bdi>
      </Link>
    );
  }
  if (column.key === 'outcome') return <OutcomeWord outcome={row.outcome} />;
  const text = column.text(row);
  if (column.key === 'findings') return text === '0' ? <span className="quiet">none</span> : text;
  if (column.key === 'covered') return <Covered row={row} />;
  if (column.align === 'number') return <Aligned text={text} />;
  if (text === '') return <span className="quiet">none</span>;
  return (
    <bdi title={text} className={text === 'unknown' ? 'unknown' : undefined}>
      {text}
    </bdi>
  );
}

function Covered({ row }: { readonly row: PointRow }) {
  const { covered, targets } = row;
  if (targets === 0) return <span className="quiet">no target</span>;
  return (
    <span className={covered === undefined ? 'quiet' : covered < targets ? 'short-of' : undefined}>
      {covered ?? '…'} of {targets}
    </span>
  );
}

/** A number with its unit, its decimal sign under those above and below. */
function Aligned({ text }: { readonly text: string }) {
  const match = /^([^\d]*\d+)([.,]\d+)?\s+(.*)$/.exec(text);
  if (match === null) {
    return <span className={text === 'unknown' ? 'unknown' : 'quiet'}>{text === '' ? '–' : text}</span>;
  }
  return (
    <span className="aligned">
      <span>{match[1]}</span>
      <span>
        {match[2]} {match[3]}
      </span>
    </span>
  );
}
