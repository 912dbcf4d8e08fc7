import { cellText, count, words } from './cells.ts';
import type { Cell, SetTable } from './record.ts';
import { numberColumn, setTable, textColumn } from './set-table.ts';

/** As many places as a row can name and still be read at a glance. */
const namedInRow = 2;
/** A row of a list of places that stays well below one page. */
const namedInList = 24;

interface Alike {
  readonly places: readonly string[];
  readonly cells: readonly Cell[];
}

interface Group {
  readonly name: string;
  readonly places: readonly string[];
}

/**
 * Tables whose first column names a place, with one row for all places that are told the same: few places stand in the
 * row, more of them as a group, and a last table lists each group.
 */
export function gatheredPlaces(name: string, tables: readonly SetTable[]): readonly SetTable[] {
  const gathered = tables.map((table) => ({ table, alike: alikeRows(table) }));
  const all = gathered.flatMap(({ alike }) => alike.map(({ places }) => places));
  const groups = new Map<string, Group>();
  for (const places of all) {
    const key = keyOf(places);
    if (places.length > namedInRow && !groups.has(key)) {
      groups.set(key, { name: `Group ${groups.size + 1}`, places });
    }
  }
  const at = (places: readonly string[]) => {
    const group = groups.get(keyOf(places));
    return words(group === undefined ? places.join(', ') : `${group.name}: ${places.length} places`);
  };
  return [
    ...gathered.map(({ table, alike }) => ({
      ...table,
      rows: alike.map(({ places, cells }) => [at(places), ...cells]),
    })),
    ...(groups.size === 0 ? [] : [groupTable(name, [...groups.values()])]),
  ];
}

/** Rows that differ in nothing but their place, in the order of the first of them. */
function alikeRows({ rows }: SetTable): readonly Alike[] {
  const found = new Map<string, { places: Set<string>; cells: readonly Cell[] }>();
  for (const [place, ...cells] of rows) {
    const key = JSON.stringify(cells.map((cell) => (cell.is === 'unknown' ? cell.is : [cell.is, cellText(cell)])));
    const before = found.get(key);
    found.set(key, {
      places: new Set([...(before?.places ?? []), cellText(place!)]),
      cells: before === undefined ? cells : before.cells.map((cell, at) => both(cell, cells[at]!)),
    });
  }
  return [...found.values()].map(({ places, cells }) => ({ places: [...places], cells }));
}

/** What is unknown at several places is asked of each of them. */
function both(one: Cell, other: Cell): Cell {
  return one.is === 'unknown' && other.is === 'unknown'
    ? { is: 'unknown', missing: [...one.missing, ...other.missing] }
    : one;
}

function groupTable(name: string, groups: readonly Group[]): SetTable {
  const rows = groups.flatMap(({ name: group, places }) =>
    Array.from({ length: Math.ceil(places.length / namedInList) }, (_, part) => ({
      group: part === 0 ? group : `${group}, continued`,
      of: places.length,
      places: places.slice(part * namedInList, (part + 1) * namedInList),
    })),
  );
  return setTable<(typeof rows)[number]>(
    `${name} groups`,
    'The places of each group',
    [
      textColumn('Group', ({ group }) => words(group), 1),
      numberColumn('Places', '', ({ of }) => count(of), 0.6),
      textColumn('Tags', ({ places }) => words(places.join(', ')), 9),
    ],
    rows,
    'No group is needed.',
  );
}

function keyOf(places: readonly string[]): string {
  return places.join('\n');
}
