import { type DesignedMachine, type PointPlace, pointPlaces, type Stated } from '@soundpost/core';
import { type Html, html, named } from '../typesetting/html.ts';
import { unknown } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';

/** The points by the numbers they have in the drawing of the train. */
export function pointPlaceTable({ stated }: DesignedMachine): Html {
  const points = new Map(stated.points.map(({ statement }) => [statement.name, statement]));
  return table({
    caption: 'Points in the drawing: as stated, and by what each was placed',
    columns: [
      { head: 'No.', kind: 'number', cell: (each: PointPlace) => String(each.number) },
      { head: 'Point', cell: (each) => named(each.name) },
      { head: 'Location', cell: (each) => words(points.get(each.name)?.location) },
      { head: 'Direction', cell: (each) => words(points.get(each.name)?.direction) },
      { head: 'At', cell: at },
      { head: 'Rotation', cell: ({ rotation }) => rotation ?? 'not stated' },
    ],
    rows: pointPlaces(stated),
    folds: true,
    empty: 'No measuring point is stated.',
  });
}

function at({ on }: PointPlace): Html {
  return on === undefined ? html`place not stated on one element` : html`${named(on.element)}, told by ${on.by}`;
}

function words(text: Stated<string> | undefined): Html {
  return text?.known === true ? named(text.value, 400) : unknown();
}
