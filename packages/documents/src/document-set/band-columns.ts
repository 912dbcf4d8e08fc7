import type { Showing, Target } from '@soundpost/core';
import { answered, numberIn } from './cells.ts';
import { numberColumn, type TableColumn } from './set-table.ts';

/** Where the band of a target begins and ends, in hertz; both the same for a line. */
export function bandColumns<Row extends { readonly target: Target }>(showing: Showing): readonly TableColumn<Row>[] {
  const end = (head: string, of: 'low' | 'high') =>
    numberColumn<Row>(
      head,
      'Hz',
      ({ target }) => answered(target.band, (band) => numberIn('Hz', 'frequency', band[of], showing)),
      0.8,
    );
  return [end('From', 'low'), end('To', 'high')];
}
