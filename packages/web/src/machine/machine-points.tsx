import { Link } from 'wouter';
import { pointAddress } from '../app/address.ts';
import type { PlacedPoint } from '../engine/machine/views.ts';
import { OutcomeWord } from '../parts/verdict-word.tsx';

/** The points by their numbers in the drawing: where each sits, from which side it is seen, and how it came out. */
export function MachinePoints({ points }: { readonly points: readonly PlacedPoint[] }) {
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
            <th scope="col">Seen from, rotation</th>
            <th scope="col">Against its targets</th>
            <th scope="col" className="number">
              Least margin
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((each) => (
            <Row key={each.row.of} point={each} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ point: { number, row, at, toldBy, seen, rotation } }: { readonly point: PlacedPoint }) {
  return (
    <tr>
      <td className="number" data-head="No.">
        {number}
      </td>
      <th scope="row">
        <Link href={pointAddress(row.of)} title={row.name}>
          <bdi>{row.name}</bdi>
        </Link>
      </th>
      <td data-head="Sits at">
        {at === undefined ? (
          <em>place not stated on one element</em>
        ) : (
          <>
            <bdi>{at}</bdi> <span className="quiet">told by {toldBy}</span>
          </>
        )}
      </td>
      <td data-head="Location">
        <bdi>{row.location}</bdi>
      </td>
      <td data-head="Direction">
        <bdi>{row.direction}</bdi>
      </td>
      <td data-head="Seen from, rotation">
        {seen === undefined ? <em>side not stated</em> : <bdi>{seen}</bdi>},{' '}
        {rotation === undefined ? <em>rotation not stated</em> : rotation}
      </td>
      <td data-head="Against its targets">
        <OutcomeWord outcome={row.outcome} />
        {row.covered === undefined || row.targets === 0 ? undefined : (
          <span className="quiet">
            {' '}
            {row.covered} of {row.targets}
          </span>
        )}
      </td>
      <td className="number" data-head="Least margin">
        {row.margin ?? '—'}
      </td>
    </tr>
  );
}
