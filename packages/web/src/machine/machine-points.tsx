import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import type { MachineBench, PlacedPoint } from '../engine/machine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber } from '../parts/why.tsx';
import { ActGroup } from './act-group.tsx';
import { HearsButton } from './hears-button.tsx';
import { MoveButtons } from './move-buttons.tsx';
import { RemoveButton } from './remove-button.tsx';
import { RenameButton } from './rename-button.tsx';

/** The points by their numbers in the drawing: where each sits, from which side it is seen, and how it came out. */
export function MachinePoints({ bench }: { readonly bench: MachineBench }) {
  const { points } = bench;
  if (points.length === 0) {
    return <p className="empty">No measuring point is stated for this machine: nothing of it is watched.</p>;
  }
  return (
    <section className="scrolls" aria-label="Points of this machine">
      <table className="machine-points">
        <thead>
          <tr>
            <th scope="col" className="number">
              No.
            </th>
            <th scope="col">Point</th>
            <th scope="col">Sits at</th>
            <th scope="col">Location</th>
            <th scope="col">Direction</th>
            <th scope="col">Seen from</th>
            <th scope="col">Rotation</th>
            <th scope="col">Against its targets</th>
            <th scope="col" className="number">
              Least margin
            </th>
            <th scope="col">
              <span className="unseen">Order</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((each) => (
            <Row key={each.row.of} bench={bench} point={each} last={points.length} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface RowOptions {
  readonly bench: MachineBench;
  readonly point: PlacedPoint;
  /** The number of the last one. */
  readonly last: number;
}

function Row({ bench, point: { number, row, at, toldBy, hears, seen, rotation }, last }: RowOptions) {
  const machine = bench.name;
  return (
    <tr>
      <Cell head="No." number>
        {number}
      </Cell>
      <th scope="row">
        <Link href={pointAddress(row.of)} title={row.name}>
          <bdi>{row.name}</bdi>
        </Link>
      </th>
      <Cell head="Sits at">
        {at === undefined ? <em>place not stated on one element</em> : <bdi>{at}</bdi>}
        {toldBy === undefined ? undefined : <span className="quiet"> told by {toldBy}</span>}
      </Cell>
      <Cell head="Location">
        <Long text={row.location} />
      </Cell>
      <Cell head="Direction">
        <Long text={row.direction} />
      </Cell>
      <Cell head="Seen from">{seen === undefined ? <em>side not stated</em> : <Long text={seen} />}</Cell>
      <Cell head="Rotation">{rotation === undefined ? <em>rotation not stated</em> : rotation}</Cell>
      <Cell head="Against its targets">
        <OutcomeWord outcome={row.outcome} />
        {row.covered === undefined || row.targets === 0 ? undefined : (
          <span className="quiet">
            {' '}
            <OpeningNumber asked={{ is: 'covered', points: [row.of] }} what="Targets covered">
              {row.covered} of {row.targets}
            </OpeningNumber>
          </span>
        )}
      </Cell>
      <Cell head="Least margin" number>
        {row.margin === undefined ? (
          '—'
        ) : (
          <OpeningNumber asked={{ is: 'nearest', of: row.of }} what="Least margin">
            {row.margin}
          </OpeningNumber>
        )}
      </Cell>
      <td className="acts-cell">
        <ActGroup of={`point ${row.name}`}>
          <MoveButtons what="point" machine={machine} name={row.name} first={number === 1} last={number === last} />
          <HearsButton bench={bench} point={row.name} hears={hears} />
          <RenameButton what="point" machine={machine} name={row.name} />
          <RemoveButton what="point" machine={machine} name={row.name} />
        </ActGroup>
      </td>
    </tr>
  );
}

interface CellOptions {
  readonly head: string;
  readonly number?: boolean;
  readonly children: ReactNode;
}

function Cell({ head, number = false, children }: CellOptions) {
  return (
    <td className={number ? 'number' : undefined} data-head={head}>
      <div>{children}</div>
    </td>
  );
}

/** A text of a file, cut after four lines; the whole of it is told where it is pointed at. */
function Long({ text }: { readonly text: string }) {
  return (
    <bdi className="long" title={text}>
      {text}
    </bdi>
  );
}
