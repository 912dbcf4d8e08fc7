import { memo, useState } from 'react';
import { Link } from 'wouter';
import { machineAddress } from '../app/address.ts';
import type { PartChoices } from '../engine/part-choices.ts';
import type { PointRow } from '../engine/views.ts';
import { CellEditor } from './cell-editor.tsx';
import { CellNote } from './cell-note.tsx';
import { type Column, type ColumnKey, columns } from './columns.ts';
import type { Place } from './grid-keys.ts';
import { askedOf } from './grid-why.tsx';
import type { Line } from './lines.ts';
import { PointCell } from './point-cell.tsx';
import type { TypedRow } from './use-typed-cells.ts';

export interface GridLineProps {
  readonly line: Line;
  readonly index: number;
  /** Where it stands below the heads; undefined where it stays right under them, over what scrolls. */
  readonly top: number | undefined;
  readonly height: number;
  /** The column of the active cell, if it is in this line. */
  readonly active: number | undefined;
  readonly chosen: 'all' | 'some' | 'none';
  readonly typed: TypedRow | undefined;
  readonly parts: PartChoices | undefined;
  readonly editing: { readonly first: string | undefined } | undefined;
  readonly acts: GridActs;
}

/** What a hand can do at a line; the same functions for all lines, always. */
export interface GridActs {
  /** The pointer came down on a cell; `again` where it was the active one already. */
  readonly point: (to: Place, again: boolean) => void;
  /** The number of a cell was opened. */
  readonly why: (row: PointRow, column: ColumnKey, from: HTMLElement) => void;
  readonly toggle: (line: number) => void;
  readonly reach: (line: number) => void;
  readonly take: (row: PointRow, column: ColumnKey, text: string) => void;
  readonly stop: (move: -1 | 0 | 1) => void;
}

const signs = { all: '☑', some: '◪', none: '☐' } as const;

/** A line of the table: a machine, or a measuring point under it. */
export const GridLine = memo(function GridLine(props: GridLineProps) {
  const { line, index, top, height, active, chosen, acts } = props;
  const empty = line.kind === 'machine' && line.points.length === 0;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of a grid by its roles
    // biome-ignore lint/a11y/useFocusableInteractive: the grid keeps the focus and points at its cell
    <div
      role="row"
      aria-rowindex={index + 2}
      aria-selected={chosen === 'all' && !empty}
      className={`grid-row ${line.kind} ${top === undefined ? 'pinned' : ''}`}
      style={top === undefined ? { top: height, height } : { transform: `translateY(${top}px)`, height }}
    >
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: Space does it from the keyboard of the grid */}
      {/* biome-ignore lint/a11y/useSemanticElements: a cell of a grid by its roles */}
      {/* biome-ignore lint/a11y/useFocusableInteractive: as above */}
      <div
        role="gridcell"
        id={`cell-${index}-0`}
        aria-colindex={1}
        aria-label={`${chosen === 'none' ? 'not selected' : chosen === 'all' ? 'selected' : 'partly selected'}`}
        className={`select ${active === 0 ? 'active' : ''}`}
        onClick={(event) => {
          acts.point({ line: index, column: 0 }, false);
          if (event.shiftKey) acts.reach(index);
          else acts.toggle(index);
        }}
      >
        <span aria-hidden="true">{empty ? '' : signs[chosen]}</span>
      </div>
      {line.kind === 'machine' ? (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the arrow keys of the grid lead here
        // biome-ignore lint/a11y/useSemanticElements: as above
        // biome-ignore lint/a11y/useFocusableInteractive: as above
        <div
          role="gridcell"
          id={`cell-${index}-${active === undefined || active === 0 ? 1 : active}`}
          aria-colindex={2}
          aria-colspan={columns.length}
          className={`machine-cell ${active !== undefined && active > 0 ? 'active' : ''}`}
          onClick={() => acts.point({ line: index, column: 1 }, false)}
        >
          <span>
            <Link href={machineAddress(line.name)} tabIndex={-1}>
              <bdi>{line.name}</bdi>
            </Link>{' '}
            <bdi className="machine-title">{line.title}</bdi>
            {empty ? <span className="quiet"> no measuring point yet</span> : undefined}
          </span>
        </div>
      ) : (
        columns.map((column, at) => <ValueCell key={column.key} {...props} column={column} at={at + 1} />)
      )}
    </div>
  );
});

function ValueCell(props: GridLineProps & { readonly column: Column; readonly at: number }) {
  const { line, index, active, typed, parts, editing, acts, column, at } = props;
  const [cell, setCell] = useState<HTMLElement | null>(null);
  if (line.kind !== 'point') return undefined;
  const own = typed?.get(column.key);
  const here = active === at;
  const edits = here && editing !== undefined;
  const note = `note-${index}-${at}`;
  const words = own?.refused;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Enter does it from the keyboard of the grid
    // biome-ignore lint/a11y/useSemanticElements: a cell of a grid by its roles
    // biome-ignore lint/a11y/useFocusableInteractive: the grid keeps the focus and points at its cell
    <div
      ref={setCell}
      role="gridcell"
      id={`cell-${index}-${at}`}
      aria-colindex={at + 1}
      aria-readonly={column.editing === undefined}
      aria-describedby={words !== undefined && here ? note : undefined}
      className={[
        `of-${column.key}`,
        column.align,
        here ? 'active' : '',
        column.editing ? 'editable' : '',
        words ? 'refused' : '',
      ]
        .filter(Boolean)
        .join(' ')}
      onClick={(event) => {
        if (!edits && !event.defaultPrevented) acts.point({ line: index, column: at }, here);
      }}
      onDoubleClick={() => {
        if (!edits) acts.point({ line: index, column: at }, true);
      }}
    >
      {edits ? (
        <CellEditor
          row={line.row}
          column={column}
          first={editing.first ?? own?.text}
          parts={parts}
          refused={words}
          take={(text, move) => {
            if (own !== undefined || text !== column.text(line.row)) acts.take(line.row, column.key, text);
            acts.stop(move);
          }}
          leave={acts.stop}
        />
      ) : own === undefined ? (
        <Shown row={line.row} column={column} acts={acts} place={{ line: index, column: at }} />
      ) : (
        <span className={words === undefined ? 'quiet' : 'refused-text'}>
          {words === undefined ? undefined : (
            <>
              <span aria-hidden="true">✗ </span>
              <span className="unseen">refused: </span>
            </>
          )}
          <bdi>{own.text === '' ? 'nothing' : own.text}</bdi>
        </span>
      )}
      {words !== undefined && here && !edits ? (
        <CellNote id={note} cell={cell} className="why">
          <p className="refused">✗ {words}</p>
          <p className="quiet">Not in the file yet. Enter to mend it, Escape to give it up.</p>
        </CellNote>
      ) : undefined}
    </div>
  );
}

/** A cell whose number opens is a button for the pointer; from the keyboard the grid opens it, by Enter or a question mark. */
function Shown({
  row,
  column,
  acts,
  place,
}: {
  readonly row: PointRow;
  readonly column: Column;
  readonly acts: GridActs;
  readonly place: Place;
}) {
  const cell = <PointCell row={row} column={column} />;
  if (askedOf(row, column.key) === undefined) return cell;
  return (
    <button
      type="button"
      tabIndex={-1}
      className="opens"
      onClick={(event) => {
        event.preventDefault();
        acts.point(place, false);
        acts.why(row, column.key, event.currentTarget);
      }}
    >
      {cell}
    </button>
  );
}
